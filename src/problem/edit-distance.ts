/**
 * How many slips lead from one word to the other: a letter left out, put in, or mistaken, or two neighbours swapped, each
 * counted as one. No letters are touched twice (optimal string alignment), after Damerau, Communications of the ACM 7 (1964).
 */
export function editDistance(one: string, other: string): number {
  const from = [...one];
  const to = [...other];
  let twoBack: number[] = [];
  let oneBack = Array.from({ length: to.length + 1 }, (_, place) => place);
  for (let row = 1; row <= from.length; row++) {
    const current = [row];
    for (let place = 1; place <= to.length; place++) {
      const same = from[row - 1] === to[place - 1];
      let least = Math.min(oneBack[place]! + 1, current[place - 1]! + 1, oneBack[place - 1]! + (same ? 0 : 1));
      const swapped = row > 1 && place > 1 && from[row - 1] === to[place - 2] && from[row - 2] === to[place - 1];
      if (swapped) least = Math.min(least, twoBack[place - 2]! + 1);
      current.push(least);
    }
    twoBack = oneBack;
    oneBack = current;
  }
  return oneBack[to.length]!;
}
