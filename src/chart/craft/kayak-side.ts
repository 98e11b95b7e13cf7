import { again, body, fitting, line, type View } from './view.js';

/** A kayak seen from starboard. */
export const kayakSide: View = {
  name: 'kayak, side',
  width: 500,
  height: 76,
  marks: [
    fitting('M 190 38 L 184 20 C 184 16 194 16 196 20 L 206 36 Z'),
    body(
      'M 4 22 C 50 34 110 40 176 40 C 200 33 240 30 300 36 C 380 34 440 28 496 12 C 490 42 470 66 420 70 C 320 74 180 74 90 70 C 40 66 14 46 4 22 Z',
    ),
    again(
      'hull below waterline',
      'M 462.3 59 C 451.4 64.7 437.6 68.6 420 70 C 320 74 180 74 90 70 C 70.8 68.5 55.2 64.6 42.6 59 Z',
    ),
    again('waterline', 'M 471.7 53 C 468.8 55.2 465.7 57.2 462.3 59 L 42.6 59 C 38.5 57.2 34.7 55.2 31.2 53 Z'),
    again(
      'seams and welds',
      'M 6.5 27 C 60 40 120 46 190 46 L 310 45 C 380 43 440 36 495 18 L 493.6 23 C 440 40 380 47 310 49 L 190 50 C 120 50 60 44 9.4 32 Z',
    ),
    fitting('M 178 38.5 C 202 30 242 27.5 304 34 L 302 38 C 242 32 204 34 180 42 Z'),
    line('M 330 34.5 L 342 31 L 366 30.5 L 372 32.5 M 92 37 L 100 33.5 L 128 35.5 L 132 38.5'),
    line('M 396 31 L 404 26 M 420 28.5 L 428 23.5 M 60 33.5 L 66 28.5', 'faint'),
  ],
};
