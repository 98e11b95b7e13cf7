import type { Problem } from '../problem/problem.js';

/** A problem as one flat JSON object, with its place spelt out. */
export function problemJson({ code, severity, place, seen, wanted, remedy }: Problem): object {
  return {
    file: place.file,
    line: place.line,
    column: place.column,
    field: place.field,
    code,
    severity,
    seen,
    wanted,
    remedy,
  };
}
