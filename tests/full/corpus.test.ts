import { describe } from "vitest";
import { testsOfCorpus } from "../workbook/comparing/corpus-tests.js";
import { corpusExists, corpusFiles } from "../workbook/corpus.js";

/** Every file, cell by cell; the fast tests do the same with the smaller ones. */
describe.skipIf(!corpusExists("workbooks"))("all real workbooks, beside two other readers", () => {
  testsOfCorpus(corpusFiles("workbooks"));
});
