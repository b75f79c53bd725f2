/** Why a workbook cannot be edited; `text` is one clause that says what was found, lower-case start. */
export interface UneditableReason {
  /** Kebab-case, for programs. */
  readonly code: string;
  readonly text: string;
}

/** Ends the planning of an edit from any depth. Never leaves this folder: `editWorkbook` turns it into a value. */
export class Uneditable extends Error {
  readonly reason: UneditableReason;

  constructor(reason: UneditableReason) {
    super(reason.text);
    this.name = "Uneditable";
    this.reason = reason;
  }
}

/**
 * Gives up the edit before anything is written.
 *
 * @throws Uneditable always
 */
export function cannotEdit(code: string, text: string): never {
  throw new Uneditable({ code, text });
}
