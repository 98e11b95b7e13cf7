import { bladesShape, hubShape } from './equipment.js';
import { bothSides, box, disc } from './path.js';
import { again, body, fitting, line, part, type View } from './view.js';

const middle = 95;

/** A pontoon boat with an outboard, seen from astern. */
export const pontoonBoatStern: View = {
  name: 'stern',
  width: 190,
  height: 196,
  marks: [
    line('M 18 60 L 18 12 M 172 60 L 172 12', 'detail'),
    fitting('M 10 12 C 50 2 140 2 180 12 L 180 18 C 140 9 50 9 10 18 Z'),
    fitting(box(14, 44, 162, 44)),
    fitting(bothSides(box(19, 49, 46, 34, 3), middle)),
    line(bothSides('M 19 62 L 65 62', middle)),
    fitting('M 8 88 L 182 88 L 182 98 L 8 98 Z'),
    line(bothSides('M 24 98 L 32 106 M 60 98 L 52 106', middle)),
    body(bothSides(disc(42, 130, 27), middle)),
    again(
      'hull below waterline',
      bothSides('M 17.8 140 L 66.2 140 C 61 152 52 157 42 157 C 32 157 23 152 17.8 140 Z', middle),
    ),
    again('waterline', bothSides('M 15.5 133 L 68.5 133 L 66.2 140 L 17.8 140 Z', middle)),
    again('seams and welds', bothSides('M 38 103 L 46 103 L 46 107 L 38 107 Z', middle)),
    again('through-hull fittings', bothSides(disc(42, 118, 3.5), middle)),
    again('swim platform', bothSides(box(18, 90, 44, 8, 2), middle)),
    part('transom', 'M 70 98 L 120 98 L 116 142 L 74 142 Z', 78, 136),
    again('transducer', 'M 100 142 L 114 142 L 112 149 L 102 149 Z'),
    fitting('M 83 62 L 107 62 L 104 76 L 104 146 L 86 146 L 86 76 Z'),
    fitting('M 77 66 L 113 66 L 110 88 L 80 88 Z'),
    body('M 71 56 C 69 34 75 22 83 20 L 107 20 C 115 22 121 34 119 56 L 115 67 L 75 67 Z'),
    again('cooling system', 'M 79 42 L 111 42 L 109 57 L 81 57 Z'),
    again('zincs', disc(95, 112, 5)),
    line('M 92 109 L 98 115 M 98 109 L 92 115', 'faint'),
    again(
      'outboard lower unit',
      'M 90 151 L 100 151 L 104 157 L 104 175 L 97 179 L 96 193 L 94 193 L 93 179 L 86 175 L 86 157 Z',
    ),
    again('cavitation plate', 'M 66 146 L 124 146 L 122 151 L 68 151 Z'),
    again('propeller', bladesShape(middle, 166, 24)),
    again('exhaust hub', hubShape(middle, 166, 6.5)),
  ],
};
