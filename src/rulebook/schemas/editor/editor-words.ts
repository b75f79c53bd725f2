import { plainWords } from "../../../facts/index.js";

const CONDITION = "Which condition holds.";
const CITES = "Ids of the citations, further down in this file, that it rests on.";
const READ_ON = "The day on which the source was read; a clause needs it.";
const TITLE = "What it is, in one line.";

/** What a key means, by the title of the mapping that it stands in and its own name. */
const KEYS: Readonly<Record<string, string>> = {
  "rule/sets": "Sets of rules, as the manifest names them, in which the rule is asked.",
  "rule/stages": "Whether it is asked of proposed points, of built ones, or of both.",
  "rule/appliesWhen": "When the rule applies; left out, it always does.",
  "rule/limits": "What breaks the rule, each entry for its days; one begins where the one before ends.",
  "rule/citations": "The sources, by ids that limits cite.",
  "rule/remedy": "What to do about a finding.",
  "rule/undecided":
    "How an open question counts in the verdict: as a warning, or as a failure where a thing must be known.",
  "rule/cases": "Examples with what must come out: at each limit and just past it, missing, at the edges of dates.",
  "judged facts/proposed": "The fact that is judged of proposed points.",
  "judged facts/installed": "The fact that is judged of built points.",
  "limit/fail": "What makes the rule fail.",
  "limit/warn": "What makes the rule warn, where it does not fail.",
  "limit/cites": CITES,
  "citation/readOn": READ_ON,
  "messages/fail": "What a failure says.",
  "messages/warn": "What a warning says.",
  "remedy/text": "What to do, in words.",
  "case/name": "What the case shows; each has a name of its own.",
  "case/expect": "What must come out.",
  "given facts/stage": "The stage at which the case is run; left out, every stage of the rule.",
  "condition/all": "All of these hold.",
  "condition/any": "At least one of these holds.",
  "condition/not": "This does not hold.",
  "named condition/condition": "Name of a file in conditions/.",
  "comparison/fact": "The fact that is compared.",
  "comparison/operator": "How it is compared.",
  "value/fact": "The fact that it is compared with.",
  "bound/fact": "The fact that the limit is.",
  "bound/times": "What the fact is multiplied by; never a temperature.",
  "bound/plus": "What is added, with its unit; for a temperature a difference, such as -10 K.",
  "band/below": "Broken by anything less than this.",
  "band/above": "Broken by anything more than this.",
  "band/atOrBelow": "Broken by this and anything less.",
  "band/atOrAbove": "Broken by this and anything more.",
  "band/oneOf": "Broken by any of these choices.",
  "band/noneOf": "Broken by any choice but these.",
  "band/when": "Broken where this condition holds.",
  "given value/lowest": "The lowest that it may be, with its unit.",
  "given value/highest": "The highest that it may be, with its unit.",
  "given value/unknown": "Why it is not known.",
  "condition file/title": TITLE,
  "condition file/when": CONDITION,
  "model/title": "The model in words; surveys may write it so.",
  "model/facts": "What the sheet of the model states, each value for its days.",
  "model/citations": "The sources, by ids that values cite.",
  "model value/cites": CITES,
  "manifest/name": "Name of the rulebook, as results show it.",
  "manifest/version": "Raised with every change; what changed stands in CHANGES.md.",
  "manifest/sets": "Names of the sets of rules.",
  "table/title": TITLE,
  "table/entries": "The rows, each list for its days.",
  "table/citations": "The sources, by ids that entries cite.",
  "entry/cites": CITES,
  "entry/rows": "One row for every choice of the facts it is looked up by.",
  "group/members": "What the rows come to together, by fact of the group.",
  "group member/sum": "The sum of this fact over the rows.",
  "group member/minimum": "The least of this fact among the rows.",
  "group member/maximum": "The greatest of this fact among the rows.",
  "group member/where": "Only rows for which this holds.",
  "count/where": "Only rows for which this holds are counted.",
  "way of measuring/measures": "How accurate it is, by quantity, each for its days.",
  "way of measuring/citations": "The sources, by ids that accuracies cite.",
  "accuracy/cites": CITES,
  "site file/states": "What holds for the whole site, by fact.",
  "site file/measuredBy": "How facts are measured at the whole site.",
  "site file/machineTypes": "What holds for a type of machine.",
  "narrower/measuredBy": "How facts are measured there.",
  "stated facts/measuredBy": "How facts are measured there.",
  "column file/columns": "What single columns mean.",
  "sheet/columns": "What single columns of the sheet mean.",
  "file of deviations/deviations": "What is accepted, one entry for each point and rule.",
  "word list/common": "Words that mean the same in every column.",
  "word list/fields": "Words of each survey field.",
  "common words/marks": "Signs that stand for a word, by language.",
  "field/headings": "Headings over such a column, by language.",
  "field/otherThings": "Words in a heading which show that another thing is meant.",
  "field/itsOwn": "Words that belong to the field although they look like something else.",
  "field/notMeant": "Words in a remark which show that it does not speak of the field.",
  "field/asides": "Words that may stand beside a number without changing it.",
  "field/choices": "What people write for each choice.",
  "field/unclear": "Words that may mean several choices, and are asked about.",
  "field/examples": "Cells with what reading them must give; the tests read them.",
  "example/heading": "The heading over the cell.",
  "example/cell": "The cell as it stands in a survey.",
  "example/locale": "Language of the survey, with its country where numbers are written otherwise there.",
  "example/expect": "What reading it must give.",
  "/replaces": "Whole keys as they would stand in the file of the thing; null takes a key away.",
  "change file/addsCases": "Cases that are put behind those of the rule.",
  "book it lies over/name": "Name of the rulebook or overlay.",
};

const COMMON: Readonly<Record<string, string>> = {
  yes: "yes",
  no: "no",
  missing: "that a value is not there",
  about: "that a number is rough",
  or: "one of two",
  to: "the way from one number to another",
  from: "the beginning of a range",
  not: "a denial",
  doubt: "doubt about a value",
  most: "at most",
  least: "at least",
  ditto: "the same as in the row above",
  total: "a row of totals",
};

const LANGUAGES: Readonly<Record<string, string>> = {
  en: "English",
  de: "German",
  es: "Spanish",
  fr: "French",
};

/** What a key means for the person who writes the file; null where nothing is known of it. */
export function keyInWords(title: string, key: string): string | null {
  const said = KEYS[`${title}/${key}`];
  if (said !== undefined) return said;
  if (title === "common words") return COMMON[key] === undefined ? null : `Words for ${COMMON[key]}.`;
  if (LANGUAGES[key] !== undefined) return `In ${LANGUAGES[key]}.`;
  if (title === "machine types") return `What holds for every machine of the type ${plainWords(key)}.`;
  if (title === "thing changed") return `Id of the ${key} that is changed.`;
  if (title.startsWith("changed "))
    return `What stands there instead of the ${key} of the ${title.slice(8)}, as a whole.`;
  if (title === "quantities") return `How accurately it measures a ${plainWords(key)}.`;
  return null;
}

/** What the words of closed lists mean, by the title of the list. */
export const WORDS: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  operator: {
    equal: "is this value",
    notEqual: "is another value",
    lessThan: "is less",
    lessThanInclusive: "is less or the same",
    greaterThan: "is more",
    greaterThanInclusive: "is more or the same",
    in: "is one of a list",
    notIn: "is none of a list",
  },
  basis: {
    standard: "a standard; give its title as source",
    handbook: "a book; give its title as source",
    "data-set": "published data; give their title as source",
    "maker-data": "a data sheet of a maker; give its title as source",
    "company-practice": "the company does it so",
    derivation: "follows by computing from other things",
    "common-practice": "the trade does it so, without one source",
    "from-memory": "remembered, not read again; look it up when you can",
  },
  stage: { proposed: "before anything is built", installed: "as it was built" },
  outcome: {
    pass: "no limit is broken",
    warn: "a warning limit is broken",
    fail: "a failing limit is broken",
    undecided: "what is known does not settle it",
    "not-applicable": "the rule does not apply",
    "no-limit-in-force": "no entry holds on the day",
  },
  reason: {
    missing: "it is not there",
    doubtful: "somebody marked it as doubtful",
    unreadable: "it stands there and cannot be read",
    conflicting: "two places say different things",
  },
  word: {
    warn: "the point warns",
    fail: "the point fails",
    never: "it can hurt somebody; no deviation is accepted",
  },
};
