import type { Field, ReferenceField, TextField } from '../../record/field.js';

/** A name that exports write for a water, in the region where it means that water. */
export interface Alias {
  readonly name: string;
  /** Empty where the name means the water only in cells that tell no region. */
  readonly region: string;
  readonly waterbody: string;
}

/** A field whose cells hold names of waters, to be matched once the file is read. */
export interface WaterRule {
  readonly field: ReferenceField;
  /** The field that holds the name as written. */
  readonly written: TextField;
  /** The field that holds the region as written; null where no column tells it. */
  readonly regionWritten: TextField | null;
  /** The region of all names in the file; empty where it is not declared. */
  readonly region: string;
}

/** A name that matched no water, with how often it was met: ready to be filled in. */
export interface UnmatchedWater {
  readonly name: string;
  readonly region: string;
  readonly times: number;
  /** The nearest known name in that region; empty for none. */
  readonly nearest: string;
  readonly why: string;
}

/** A field beside the table's own, which holds what a column says until it is matched. */
export function heldField(field: Field, what: string): TextField {
  return { type: 'text', name: `${field.name} ${what}`, meaning: `What the export says of ${field.name}.` };
}
