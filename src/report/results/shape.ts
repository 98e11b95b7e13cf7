/** Whether a value of unknown origin has the shape that is wanted. */
export type Shape = (value: unknown) => boolean;

/** A text. */
export const text: Shape = (value) => typeof value === 'string';

/** A number that is one. */
export const number: Shape = (value) => Number.isFinite(value);

/** Yes or no. */
export const truth: Shape = (value) => typeof value === 'boolean';

/** The same, or null. */
export const orNull =
  (shape: Shape): Shape =>
  (value) =>
    value === null || shape(value);

/** The same, or left out. */
export const orAbsent =
  (shape: Shape): Shape =>
  (value) =>
    value === undefined || shape(value);

/** Any of several shapes. */
export const either =
  (...shapes: readonly Shape[]): Shape =>
  (value) =>
    shapes.some((shape) => shape(value));

/** One of several texts. */
export const oneOf =
  (...texts: readonly string[]): Shape =>
  (value) =>
    texts.some((one) => one === value);

/** A list of such values. */
export const listOf =
  (shape: Shape): Shape =>
  (value) =>
    Array.isArray(value) && value.every(shape);

/** An object with such fields, whatever else it has. */
export const shaped =
  (fields: Readonly<Record<string, Shape>>): Shape =>
  (value) =>
    typeof value === 'object' &&
    value !== null &&
    !Array.isArray(value) &&
    Object.entries(fields).every(([name, shape]) => shape((value as Readonly<Record<string, unknown>>)[name]));
