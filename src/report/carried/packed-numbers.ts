/**
 * Where numbers stand in the bytes that a page carries: `count` numbers of `width` bytes from `at` on, the bytes of all
 * numbers that stand at the same place together, the lowest first. Width 8 is IEEE 754 binary64; narrower ones are whole
 * numbers counted from `from`. With `steps` each is the step from the one before. Where four different numbers are enough,
 * `together` of them share a byte, the first in the lowest bits.
 */
export interface PackedNumbers {
  readonly at: number;
  readonly count: number;
  readonly width: 1 | 2 | 4 | 8;
  readonly from: number;
  readonly steps: boolean;
  readonly together: 1 | 4;
}

/** The numbers that stand there. */
export function unpackNumbers(packed: PackedNumbers, bytes: Uint8Array): Float64Array {
  const { at, count, width, from, steps, together } = packed;
  if (width === 8) return unpackFloats(at, count, bytes);
  if (together === 4) return unpackQuarters(packed, bytes);
  const numbers = new Float64Array(count);
  let before = 0;
  for (let place = 0; place < count; place++) {
    let number = bytes[at + place]!;
    if (width >= 2) number += bytes[at + count + place]! * 0x100;
    if (width === 4) number += bytes[at + 2 * count + place]! * 0x1_0000 + bytes[at + 3 * count + place]! * 0x100_0000;
    before = steps ? before + number + from : number + from;
    numbers[place] = before;
  }
  return numbers;
}

function unpackQuarters({ at, count, from }: PackedNumbers, bytes: Uint8Array): Float64Array {
  const numbers = new Float64Array(count);
  for (let place = 0; place < count; place++) {
    numbers[place] = ((bytes[at + (place >> 2)]! >> ((place & 3) * 2)) & 3) + from;
  }
  return numbers;
}

function unpackFloats(at: number, count: number, bytes: Uint8Array): Float64Array {
  const view = new DataView(new ArrayBuffer(8));
  const numbers = new Float64Array(count);
  for (let place = 0; place < count; place++) {
    for (let byte = 0; byte < 8; byte++) view.setUint8(byte, bytes[at + byte * count + place]!);
    numbers[place] = view.getFloat64(0, true);
  }
  return numbers;
}

/** Numbers as packed bytes, wherever these come to stand. */
interface Packing {
  readonly form: Omit<PackedNumbers, 'at'>;
  readonly part: Uint8Array;
}

/** What was packed before: several pages of a run carry the same columns, which nobody changes. */
const packings = new WeakMap<object, Packing>();

function packingOf(given: ArrayLike<number>): Packing {
  // One kind of array for all, since loops over many kinds are slow.
  const numbers = given instanceof Float64Array ? given : Float64Array.from(given);
  const { plain, steps } = rangesOf(numbers);
  const stepped = widthOf(steps) < widthOf(plain);
  const width = stepped ? widthOf(steps) : widthOf(plain);
  const from = width === 8 ? 0 : stepped ? steps.low : plain.low;
  const together = width === 1 && !stepped && plain.high - plain.low <= 3 ? 4 : 1;
  const form = { count: numbers.length, width, from, steps: stepped, together } as const;
  const part =
    width === 8 ? floatPlanes(numbers) : together === 4 ? quarters(numbers, from) : wholePlanes(numbers, form);
  return { form, part };
}

/** Bytes that grow as numbers are packed into them. */
export class NumberPacker {
  readonly #parts: Uint8Array[] = [];
  #length = 0;

  /** Packs numbers, which do not change any more, as narrow as they fit. */
  pack(given: ArrayLike<number>): PackedNumbers {
    const packing = packings.get(given) ?? packingOf(given);
    packings.set(given, packing);
    const packed = { at: this.#length, ...packing.form };
    this.#add(packing.part);
    return packed;
  }

  #add(part: Uint8Array): void {
    this.#parts.push(part);
    this.#length += part.length;
  }

  /** All that was packed, in order. */
  bytes(): Uint8Array {
    const whole = new Uint8Array(this.#length);
    let at = 0;
    for (const part of this.#parts) {
      whole.set(part, at);
      at += part.length;
    }
    return whole;
  }
}

interface Range {
  readonly low: number;
  readonly high: number;
  readonly whole: boolean;
}

const notWhole: Range = { low: 0, high: 0, whole: false };

/** The range of the numbers, and that of the steps from each to the next, the first from 0. */
function rangesOf(numbers: Float64Array): { readonly plain: Range; readonly steps: Range } {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  let [lowStep, highStep] = [low, high];
  let before = 0;
  for (let place = 0; place < numbers.length; place++) {
    const number = numbers[place]!;
    if (!Number.isInteger(number) || Object.is(number, -0)) return { plain: notWhole, steps: notWhole };
    const step = number - before;
    if (number < low) low = number;
    if (number > high) high = number;
    if (step < lowStep) lowStep = step;
    if (step > highStep) highStep = step;
    before = number;
  }
  if (numbers.length === 0) return { plain: { low: 0, high: 0, whole: true }, steps: { low: 0, high: 0, whole: true } };
  return { plain: { low, high, whole: true }, steps: { low: lowStep, high: highStep, whole: true } };
}

function widthOf({ low, high, whole }: Range): PackedNumbers['width'] {
  const span = high - low;
  if (!whole || span > 0xffff_ffff || !Number.isSafeInteger(low)) return 8;
  return span <= 0xff ? 1 : span <= 0xffff ? 2 : 4;
}

function wholePlanes(numbers: Float64Array, { width, from, steps }: Packing['form']): Uint8Array {
  const count = numbers.length;
  const planes = new Uint8Array(count * width);
  let before = 0;
  for (let place = 0; place < count; place++) {
    const number = numbers[place]!;
    // Below 2³², as the width says.
    let rest = ((steps ? number - before : number) - from) >>> 0;
    before = number;
    for (let byte = 0; byte < width; byte++) {
      planes[byte * count + place] = rest;
      rest >>>= 8;
    }
  }
  return planes;
}

function quarters(numbers: Float64Array, from: number): Uint8Array {
  const bytes = new Uint8Array(Math.ceil(numbers.length / 4));
  for (let place = 0; place < numbers.length; place++) {
    bytes[place >> 2]! |= (numbers[place]! - from) << ((place & 3) * 2);
  }
  return bytes;
}

function floatPlanes(numbers: Float64Array): Uint8Array {
  const count = numbers.length;
  const planes = new Uint8Array(count * 8);
  const view = new DataView(new ArrayBuffer(8));
  for (let place = 0; place < count; place++) {
    view.setFloat64(0, numbers[place]!, true);
    for (let byte = 0; byte < 8; byte++) planes[byte * count + place] = view.getUint8(byte);
  }
  return planes;
}
