import { sha256OfBytes } from "../base/index.js";

/** Letters of the name that are kept; the rest is told apart by the digest. */
const LONGEST = 40;
const DIGITS = 8;

/**
 * Makes ids of packs that are safe in file names everywhere: small letters, digits and hyphens, at most 64 signs. A
 * name that cannot be spelled so, or only like another one's, gets a digest of itself behind it.
 */
export class PackIds {
  readonly #taken = new Map<string, string>();

  /**
   * @param outage - day of the outage, or null
   * @param names - what tells the machine from others (site, tag)
   */
  of(outage: string | null, names: readonly string[]): string {
    const whole = JSON.stringify([outage, ...names]);
    const spelled = names.join("-").normalize("NFKD").toLowerCase();
    const plain = spelled.replace(/[^a-z0-9]+/g, "-").replace(/^-+|-+$/g, "");
    const isFaithful = /^[a-z0-9 -]+$/.test(spelled) && plain.length <= LONGEST;
    const day = outage ?? "no-day";
    const short = `${day}-${plain}`;
    const owner = this.#taken.get(short);
    const id =
      isFaithful && plain !== "" && (owner === undefined || owner === whole) ? short : this.#told(day, plain, whole);
    this.#taken.set(id, whole);
    return id;
  }

  #told(day: string, plain: string, whole: string): string {
    const digest = sha256OfBytes(new TextEncoder().encode(whole)).slice(0, DIGITS);
    return [day, plain.slice(0, LONGEST).replace(/-+$/, ""), digest].filter((part) => part !== "").join("-");
  }
}
