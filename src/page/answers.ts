// What the checker answers, as src/page/*.cpp write it.

export type Weight = "must" | "should" | "note" | "depends" | "open" | "paper" | "kept";

export interface Place {
  line: number;
  column: number;
  endLine: number;
  endColumn: number;
}

/** What could not be read, or is odd. `spelling` may stand at its place instead. */
export interface Problem extends Place {
  file: string;
  words: string;
  id: string;
  spelling?: string;
}

export interface Note extends Place {
  weight: Weight;
  rule: string;
  words: string;
  remedy: string;
  /** All of the remedy. */
  whole: string;
  title?: string;
  why?: string;
  sum?: string;
  allowed?: string;
  subject: string;
  about: string;
  spelling?: string;
  /** Quiet notes of one group are one note. */
  group?: string;
  lines?: number[];
  sources: string[];
}

export interface Figure {
  low: number | null;
  high: number | null;
  unit: string;
}

/** A limit that a maker knows by name. */
export interface NamedLimit {
  name: string;
  verdict: string;
  line: number;
  weight: Weight;
  words: string;
  measured?: Figure;
  limit?: Figure;
}

export interface Margin {
  problems: Problem[];
  reminder: string;
  name?: string;
  file?: string;
  sentence?: string;
  short?: string;
  counts?: Record<string, number>;
  notes?: Note[];
  odd?: Problem[];
  limits?: NamedLimit[];
}

export interface Material {
  name: string;
  what: string;
  inci: string;
  also: string[];
  liquid: boolean;
  density: boolean;
}

export interface Names {
  materials: Material[];
  products: { name: string; about: string }[];
  statements: string[];
}

export interface Written {
  report?: string;
  problems?: Problem[];
}

/** What is asked of an exercise, one after the other. */
export interface Step {
  step: "line" | "reason" | "mend" | "figure";
  asks: string;
  choices?: string[];
}

export interface Exercise {
  subject: string;
  /** What stands above the card; of a sum, what is to be worked out. */
  preface: string;
  card: string;
  /** Nothing is wrong with it. */
  sound: boolean;
  steps: Step[];
}

export interface Judged {
  judgement: "right" | "wrong" | "not understood";
  words: string;
}

export interface Solution {
  items: { label: string; words: string }[];
  rule: string;
}

export interface LeewayLine {
  material: string;
  line: number;
  share: Figure;
  least: { share: number; stopped_by: string | null };
  most: { share: number; stopped_by: string | null };
}

export interface Amount {
  material: string;
  in?: string;
  was: Figure;
  is: Figure;
  wasMass?: Figure;
  isMass?: Figure;
  removed: boolean;
  fills: boolean;
  added?: boolean;
  inPlaceOf?: string;
}

export interface Mend {
  inShort: string;
  amounts: Amount[];
  statements?: string[];
  edits: string[];
  roundedTo: string | null;
  verdicts: { rule: string; direction: string; before: string; after: string }[];
  left: { rule: string; message: string }[];
}

export interface Suggestion {
  mended: boolean;
  broken: { rule: string; message: string; line?: number }[];
  answers: Mend[];
  unmendable: { rule: string; message: string; remedy: string }[];
  blocked: { rule: string; message: string; remedy: string }[];
  otherwise: { rule: string; message: string; remedy: string }[];
  conflict: { words: string; rule?: string; remedy?: string }[];
  notMoved: string[];
}
