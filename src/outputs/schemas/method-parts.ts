import { exactly, FACT, flag, form, KEBAB, listOf, oneOfWords, type SchemaPart, whole } from "./schema-words.js";

const VERDICTS = ["pass", "warn", "fail"];
const RULE_ID: SchemaPart = { type: "string", pattern: KEBAB };
const FACT_ID: SchemaPart = { type: "string", pattern: FACT };

/** One mounting method tried on a point. */
export const METHOD_TRIED = exactly("One mounting method in place of the proposed one, with all rules of the run.", {
  method: form("Mounting method, as a choice of the catalogue.", KEBAB),
  proposed: flag("The survey proposes it."),
  allowed: flag("The site allows it here, or says nothing about methods."),
  verdict: oneOfWords("What the rules asked say of it.", VERDICTS),
  fails: listOf("Rules that fail.", RULE_ID),
  warns: listOf("Rules that warn.", RULE_ID),
  undecided: listOf("Rules that are open.", RULE_ID),
  missing: listOf("Survey, site or model facts that the open ones are short of.", FACT_ID),
  asked: listOf(
    "Rules that put this very method to the test, whatever they say; without any, a pass says little.",
    RULE_ID,
  ),
  notAsked: listOf("Rules that concern this method and cannot be asked for lack of a column.", RULE_ID),
});

/** The method advised for a point. */
export const METHOD_ADVISED = exactly("The method that would pass the rules asked, or that comes closest.", {
  method: form("Mounting method, as a choice of the catalogue.", KEBAB),
  verdict: oneOfWords("What the rules asked say of it.", VERDICTS),
  closest: flag("It would not pass, or a rule that gates it was not asked."),
});

/** What the summary says of open points and of other methods. */
export const SETTLING_PARTS = {
  settling: listOf(
    "What to fetch one after the other: each step settles the most further points per fact.",
    exactly("Facts to be fetched.", {
      facts: listOf("Ids of the facts.", FACT_ID),
      points: whole("Points whose verdict this settles, with what was fetched before."),
      pointsSoFar: whole("Points settled up to here."),
    }),
  ),
  openPoints: exactly("Points with something undecided.", {
    toSettle: whole("Their verdict is open, and facts would settle it."),
    failAnyway: whole("They fail whatever the missing facts are."),
    notByFacts: whole("No fact would settle them: no limit is in force on the day."),
  }),
  otherMethods: listOf(
    "Other methods than the proposed ones, advised for points that do not pass.",
    exactly("A method.", {
      method: form("Mounting method, as a choice of the catalogue.", KEBAB),
      wouldPass: whole("Points that would pass the rules asked by it."),
      closest: whole("Points for which it comes closest."),
    }),
  ),
} as const;
