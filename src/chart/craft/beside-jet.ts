import { body, fitting, line, part, type View } from './view.js';

/** The intake and nozzle of a water jet under the end of a hull, as some craft of a type have them. */
export const besideJet: View = {
  name: 'with water jet',
  width: 132,
  height: 120,
  marks: [
    body('M 128 20 L 24 20 L 30 78 L 38 84 L 128 84'),
    line('M 25 28 L 128 28', 'faint'),
    fitting('M 29 46 L 10 49 C 4 49 2 53 2 58 L 3 66 C 3 71 6 73 10 73 L 32 76 Z'),
    line('M 20 48 L 20 74.5 M 12 49 L 8 72', 'faint'),
    part('jet intake', 'M 50 84 C 57 73 66 70 78 70 L 122 80 L 122 86 L 52 88 Z', 100, 80),
    line('M 66 73 L 66 87.5 M 80 71 L 80 87 M 94 74 L 94 87 M 108 77 L 108 86.5', 'faint'),
  ],
};
