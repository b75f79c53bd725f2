/**
 * A list of ids that begins with another one; equal lists with the same beginning are the same object, so that
 * thousands of points that say the same need no lists of their own.
 */
export class KeptList {
  readonly #before: KeptList | null;
  readonly #last: string;
  #ids: readonly string[] | null;
  #longer: Map<string, KeptList> | null = null;

  private constructor(before: KeptList | null, last: string) {
    this.#before = before;
    this.#last = last;
    this.#ids = before === null ? [] : null;
  }

  /** An empty list; everything that begins with it is forgotten with it. */
  static empty(): KeptList {
    return new KeptList(null, "");
  }

  get isEmpty(): boolean {
    return this.#before === null;
  }

  get ids(): readonly string[] {
    this.#ids ??= [...(this.#before?.ids ?? []), this.#last];
    return this.#ids;
  }

  with(id: string): KeptList {
    const known = this.#longer?.get(id);
    if (known) return known;
    const longer = new KeptList(this, id);
    this.#longer ??= new Map();
    this.#longer.set(id, longer);
    return longer;
  }

  /** With those ids of another list behind it that it does not hold. */
  withAll({ ids }: KeptList): KeptList {
    let all: KeptList = this;
    const own = this.ids;
    for (const id of ids) if (!own.includes(id)) all = all.with(id);
    return all;
  }
}
