import { bothSides, box, disc, oval } from './path.js';
import { again, body, fitting, line, part, type View } from './view.js';

const middle = 95;

/** A personal watercraft, seen from astern. */
export const personalWatercraftStern: View = {
  name: 'stern',
  width: 190,
  height: 184,
  marks: [
    line(bothSides('M 95 30 L 60 24 L 42 26', middle), 'outline'),
    fitting(bothSides('M 40 22 L 56 21 L 56 28 L 41 30 Z', middle)),
    fitting(bothSides('M 30 44 L 50 40 L 52 54 L 32 58 Z', middle)),
    line(bothSides('M 44 43 L 72 36', middle)),
    fitting('M 70 34 C 74 22 116 22 120 34 L 130 100 L 60 100 Z'),
    fitting('M 66 62 C 70 46 120 46 124 62 L 132 96 L 58 96 Z'),
    line('M 76 70 C 88 74 102 74 114 70 M 95 50 L 95 94', 'faint'),
    body(
      'M 14 94 C 40 88 150 88 176 94 L 172 106 C 172 122 164 138 152 146 L 95 172 L 38 146 C 26 138 18 122 18 106 Z',
    ),
    part('transom', 'M 28 106 L 162 106 C 160 120 155 130 146 138 L 95 160 L 44 138 C 35 130 30 120 28 106 Z', 44, 116),
    again('seams and welds', 'M 17.5 102 L 172.5 102 L 172 107 L 18 107 Z'),
    again('hull below waterline', 'M 38 146 L 95 172 L 152 146 L 149 141 L 95 165 L 41 141 Z'),
    fitting(box(66, 110, 58, 9, 4)),
    line('M 78 110 L 78 119 M 112 110 L 112 119', 'faint'),
    again('water intakes', disc(52, 126, 3.5)),
    body('M 74 126 L 116 126 L 120 150 L 112 158 L 78 158 L 70 150 Z'),
    again('jet intake', disc(95, 142, 13)),
    line(`${disc(95, 142, 7)} M 95 129 L 95 135 M 95 149 L 95 155 M 82 142 L 88 142 M 102 142 L 108 142`),
    line(oval(134, 126, 4, 3), 'faint'),
  ],
};
