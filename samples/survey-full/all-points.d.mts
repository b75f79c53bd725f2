/** One point: where it stands, and what the surveyor says of each fact, in the units of the catalogue. */
export interface SurveyedPoint {
  readonly id: string;
  readonly sheet: string;
  readonly facts: Readonly<Record<string, string | number | Date | null | undefined>>;
}

export const POINTS: readonly SurveyedPoint[];
