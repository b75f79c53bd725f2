import {
  exactly,
  form,
  KEBAB,
  listOf,
  numberOrNull,
  oneOfWords,
  type SchemaPart,
  textOrNull,
  whole,
} from "./schema-words.js";

const RULE_ID: SchemaPart = { type: "string", pattern: KEBAB };

const SPREAD = {
  known: whole("Points with a value."),
  notKnown: whole("Points without one."),
  bins: listOf(
    "Side by side, without gaps.",
    exactly("Points from one value up to, and not including, another.", {
      from: numberOrNull("Where it begins; null for no end on that side."),
      to: numberOrNull("Where the next begins; null for no end on that side."),
      points: whole("Points in it."),
    }),
  ),
} as const;

/** What the summary says of mending rules, and how speeds and margins are spread. */
export const SPREAD_PARTS = {
  freeing: exactly(
    "What mending rules would free, as if they said nothing more against a point; what a change breaks elsewhere is not counted, and what fails for not being known is freed by no mending.",
    {
      alone: listOf(
        "Rules that alone keep points from a better verdict, in the order of the rulebook.",
        exactly("One rule.", {
          rule: form("Id of the rule.", KEBAB),
          failToPass: whole("Points that it alone fails, and nothing warns or is open."),
          failToWarn: whole("Points that it alone fails, and something else warns or is open."),
          warnToPass: whole("Points that it alone warns, nothing fails and nothing is open."),
        }),
      ),
      inTurn: listOf(
        "What to mend one after the other: each step frees the most further points per rule.",
        exactly("Rules to be mended.", {
          rules: listOf("Ids of the rules.", RULE_ID),
          points: whole("Points that fail no more after this step, with what was mended before."),
          wouldPass: whole("Of those, points that would then pass."),
          pointsSoFar: whole("Points freed up to here."),
        }),
      ),
    },
  ),
  distributions: exactly("How speeds and margins are spread over all points, those that pass included.", {
    lowestSpeed: exactly("The lowest running speed, of each point the lowest that it can be.", {
      unit: textOrNull("Unit of the speeds."),
      ...SPREAD,
    }),
    margins: listOf(
      "Rules with a limit that is a number, in the order of the rulebook.",
      exactly("Margins of one rule: below 0 beyond the failing limit, what fails on the limit itself included.", {
        rule: form("Id of the rule.", KEBAB),
        counts: oneOfWords(
          "What known, notKnown and the bins count: points, or by a rule of groups the groups, each once.",
          ["points", "groups"],
        ),
        unit: textOrNull("Null where the margins are fractions of the limit."),
        ...SPREAD,
      }),
    ),
  }),
} as const;
