/** A label and the point of the drawing that it names. */
export interface Pointed {
  readonly name: string;
  readonly x: number;
  readonly y: number;
  /** From 0 to the drawing's width: the margin that it would rather stand in is the nearer one. */
  readonly lean: number;
}

/** A label at its place: the middle of its two lines at `top`, in the left or right margin. */
export interface Placed extends Pointed {
  readonly edge: 'left' | 'right';
  readonly top: number;
}

/** The frame that labels stand around: a drawing from 0 to `width`, with margins on both sides of the same height. */
export interface Frame {
  readonly width: number;
  readonly height: number;
  /** The least distance from the middle of a label to the next. */
  readonly apart: number;
}

/** How high the frame must be to hold so many labels on its two sides. */
export function heightFor(labels: number, apart: number): number {
  return Math.ceil(labels / 2) * apart;
}

/**
 * Labels in the margins beside a drawing, no two closer than `apart` and no two leaders crossing. Each side takes the
 * points nearer to it as far as it has room; within a side they stand as near to their points as the others allow. The
 * order in which labels are given changes nothing.
 */
export function placeLabels(labels: readonly Pointed[], frame: Frame): readonly Placed[] {
  const across = [...labels].sort(
    (one, other) => one.lean - other.lean || one.y - other.y || compare(one.name, other.name),
  );
  const room = Math.max(1, Math.floor(frame.height / frame.apart));
  const wanted = across.filter(({ lean }) => lean < frame.width / 2).length;
  const most = Math.min(room, Math.ceil(labels.length / 2) + 1);
  const left = Math.min(most, Math.max(wanted, labels.length - most));
  return [...onEdge(across.slice(0, left), 'left', frame), ...onEdge(across.slice(left), 'right', frame)];
}

function compare(one: string, other: string): number {
  return one < other ? -1 : one > other ? 1 : 0;
}

function onEdge(labels: readonly Pointed[], edge: 'left' | 'right', frame: Frame): readonly Placed[] {
  const order = [...labels].sort((one, other) => one.y - other.y || one.x - other.x || compare(one.name, other.name));
  const from = edge === 'left' ? 0 : frame.width;
  const tops = spread(
    order.map(({ y }) => y),
    frame,
  );
  // Exchanging two labels whose leaders cross shortens the leaders together, so this ends.
  for (let crossed = true; crossed; ) {
    crossed = false;
    for (let one = 0; one < order.length && !crossed; one++) {
      for (let other = one + 1; other < order.length && !crossed; other++) {
        if (!crosses(from, tops[one]!, order[one]!, tops[other]!, order[other]!)) continue;
        [order[one], order[other]] = [order[other]!, order[one]!];
        crossed = true;
      }
    }
  }
  return order.map((label, at) => ({ ...label, edge, top: tops[at]! }));
}

/** Whether the leaders from two places on one edge to their points cross; leaders that only touch do not. */
function crosses(from: number, top: number, one: Pointed, foot: number, other: Pointed): boolean {
  const turn = (ax: number, ay: number, bx: number, by: number, cx: number, cy: number): number =>
    (bx - ax) * (cy - ay) - (by - ay) * (cx - ax);
  const parts = (a: Pointed, aTop: number, b: Pointed, bTop: number): boolean =>
    turn(from, aTop, a.x, a.y, from, bTop) * turn(from, aTop, a.x, a.y, b.x, b.y) < -1e-6;
  return parts(one, top, other, foot) && parts(other, foot, one, top);
}

/** Places at least `apart` from one another, in the order given, the least moved from where they would stand. */
function spread(wanted: readonly number[], { height, apart }: Frame): readonly number[] {
  const runs: { first: number; count: number; sum: number }[] = [];
  wanted.forEach((want, at) => {
    runs.push({ first: at, count: 1, sum: want - at * apart });
    for (let last = runs.at(-1)!, before = runs.at(-2); before !== undefined; before = runs.at(-2)) {
      if (before.sum / before.count < last.sum / last.count) break;
      runs.splice(-2, 2, { first: before.first, count: before.count + last.count, sum: before.sum + last.sum });
      last = runs.at(-1)!;
    }
  });
  const lowest = height - apart / 2 - (wanted.length - 1) * apart;
  const level = (run: { count: number; sum: number }): number =>
    Math.max(apart / 2, Math.min(run.sum / run.count, lowest));
  return runs.flatMap((run) =>
    Array.from({ length: run.count }, (_, within) => level(run) + (run.first + within) * apart),
  );
}
