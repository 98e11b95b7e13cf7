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

/** Bytes that grow as numbers are packed into them. */
export class NumberPacker {
  readonly #parts: Uint8Array[] = [];
  #length = 0;

  /** Packs numbers as narrow as they fit. */
  pack(given: ArrayLike<number>): PackedNumbers {
    // One kind of array for all, since loops over many kinds are slow.
    const numbers = given instanceof Float64Array ? given : Float64Array.from(given);
    const plain = rangeOf(numbers, false);
    const steps = rangeOf(numbers, true);
    const stepped = widthOf(steps) < widthOf(plain);
    const width = stepped ? widthOf(steps) : widthOf(plain);
    const from = width === 8 ? 0 : stepped ? steps.low : plain.low;
    const together = width === 1 && !stepped && plain.high - plain.low <= 3 ? 4 : 1;
    const packed: PackedNumbers = { at: this.#length, count: numbers.length, width, from, steps: stepped, together };
    this.#add(
      width === 8 ? floatPlanes(numbers) : together === 4 ? quarters(numbers, from) : wholePlanes(numbers, packed),
    );
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

function rangeOf(numbers: Float64Array, steps: boolean): Range {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  let before = 0;
  for (let place = 0; place < numbers.length; place++) {
    const number = numbers[place]!;
    const counted = steps ? number - before : number;
    if (!Number.isInteger(number) || Object.is(number, -0)) return { low: 0, high: 0, whole: false };
    if (counted < low) low = counted;
    if (counted > high) high = counted;
    before = number;
  }
  return numbers.length === 0 ? { low: 0, high: 0, whole: true } : { low, high, whole: true };
}

function widthOf({ low, high, whole }: Range): PackedNumbers['width'] {
  const span = high - low;
  if (!whole || span > 0xffff_ffff || !Number.isSafeInteger(low)) return 8;
  return span <= 0xff ? 1 : span <= 0xffff ? 2 : 4;
}

function wholePlanes(numbers: Float64Array, { width, from, steps }: PackedNumbers): Uint8Array {
  const count = numbers.length;
  const planes = new Uint8Array(count * width);
  let before = 0;
  for (let place = 0; place < count; place++) {
    const number = numbers[place]!;
    let rest = (steps ? number - before : number) - from;
    before = number;
    for (let byte = 0; byte < width; byte++) {
      planes[byte * count + place] = rest % 0x100;
      rest = Math.floor(rest / 0x100);
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
