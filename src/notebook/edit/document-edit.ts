/** What a part that is added may be. */
export type AddedPart = 'paragraph' | 'heading' | 'inputs' | 'records' | 'figures' | 'sheet' | 'chart';

/** One change of a notebook's text. Lines and columns count from 1; where there is a `was`, it must stand there for it to be made. */
export type DocumentEdit =
  | {
      readonly change: 'cell';
      readonly line: number;
      readonly column: number;
      readonly was: string;
      readonly now: string;
    }
  | {
      readonly change: 'lines';
      readonly first: number;
      readonly last: number;
      readonly was: string;
      readonly now: string;
    }
  | { readonly change: 'add row'; readonly below: number }
  | { readonly change: 'take row'; readonly line: number }
  | { readonly change: 'move row'; readonly line: number; readonly down: boolean }
  | { readonly change: 'add part'; readonly below: number; readonly part: AddedPart }
  | { readonly change: 'take part'; readonly first: number; readonly last: number }
  | { readonly change: 'move part'; readonly first: number; readonly down: boolean };

/** The text after an edit, with the line on which to look next (null: the one that was edited); or, where it can not be made, why. */
export type Edited = { readonly text: string; readonly line: number | null } | { readonly refused: string };
