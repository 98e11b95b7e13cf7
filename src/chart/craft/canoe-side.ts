import { bothSides } from './path.js';
import { again, body, line, part, type View } from './view.js';

const middle = 250;

/** A canoe seen from the side. */
export const canoeSide: View = {
  name: 'canoe, side',
  width: 500,
  height: 100,
  marks: [
    body(
      'M 24 20 C 70 40 150 50 250 50 C 350 50 430 40 476 20 C 490 28 496 42 492 58 C 486 80 468 91 436 93 C 360 97 140 97 64 93 C 32 91 14 80 8 58 C 4 42 10 28 24 20 Z',
    ),
    part(
      'hull below waterline',
      'M 479.2 79 C 469.6 87.3 455.4 91.8 436 93 C 360 97 140 97 64 93 C 44.6 91.8 30.4 87.3 20.8 79 Z',
      372,
      87,
    ),
    part(
      'waterline',
      'M 485.6 72 C 483.7 74.6 481.6 76.9 479.2 79 L 20.8 79 C 18.4 76.9 16.3 74.6 14.4 72 Z',
      436,
      75.5,
    ),
    again(
      'seams and welds',
      bothSides(
        'M 476 20 C 490 28 496 42 492 58 C 490.7 62.9 488.5 67.6 485.6 72 L 480 72 C 484 68 486.2 63 487.2 57 C 490.4 43 485.6 31 471 22.2 Z',
        middle,
      ),
    ),
    line('M 28 24 C 72 44 152 54.5 250 54.5 C 348 54.5 428 44 472 24'),
    line(bothSides('M 462 29 L 462 24.5 M 438 39.5 L 438 34.5', middle)),
    line(bothSides('M 330 53 L 326 64 L 334 64 Z', middle), 'faint'),
    line('M 16 62 C 90 66 180 68 250 68 C 320 68 410 66 484 62', 'faint'),
  ],
};
