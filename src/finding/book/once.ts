/** A function that makes its value at the first call and gives the same one ever after. */
export function once<Value>(make: () => Value): () => Value {
  let made: { readonly value: Value } | null = null;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}
