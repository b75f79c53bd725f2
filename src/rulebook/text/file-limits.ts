/** How large a file that people write may be; beyond any of these it is refused by name. */
export interface FileLimits {
  readonly files: number;
  /** Characters of one file. */
  readonly fileLength: number;
  /** Characters of one text. */
  readonly textLength: number;
  /** Items of one list. */
  readonly listLength: number;
  /** Keys of one mapping. */
  readonly keys: number;
  /** Mappings and lists inside one another. */
  readonly depth: number;
}

/** For the files of a rulebook, which people write by hand: several times what the largest one needs. */
export const RULEBOOK_LIMITS: FileLimits = {
  files: 1000,
  fileLength: 300_000,
  textLength: 2000,
  listLength: 1000,
  keys: 1000,
  depth: 20,
};

/** A site file may name every machine of a large works, so it may be longer. */
export const SITE_LIMITS: FileLimits = { ...RULEBOOK_LIMITS, fileLength: 4_000_000, keys: 50_000 };

/** A file of deviations may speak of many points of a large works. */
export const DEVIATION_LIMITS: FileLimits = { ...RULEBOOK_LIMITS, fileLength: 4_000_000, listLength: 10_000 };

/** A column file may name every column of a sheet, on many sheets. */
export const COLUMN_FILE_LIMITS: FileLimits = {
  ...RULEBOOK_LIMITS,
  fileLength: 1_000_000,
  listLength: 2000,
  keys: 2000,
};
