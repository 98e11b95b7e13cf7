import { components } from '../../record/components.js';
import { frenchParts } from './french-words.js';
import { likeness, wordsOf } from './heading.js';

/** What checklists commonly call the parts, beside the catalogue's own names; trade checklists, common practice. */
const spoken: Readonly<Record<string, string>> = {
  'hull below waterline': 'hull, bottom, hull bottom, keel',
  'through-hull fittings': 'thru, thru hull, through hull, through hulls, fittings',
  'water intakes': 'intake, intakes',
  'trim tabs and rams': 'tabs, trim tabs, trim tab',
  transducer: 'ducer, sounder, depth sounder, sonar',
  'speed indicator': 'pitot, speedo, speed tube',
  zincs: 'zinc, anode, anodes',
  'swim platform': 'swim plat, platform, ladder',
  centreboard: 'centerboard, cboard, daggerboard',
  'outdrive lower unit': 'outdrive, outdrv, sterndrive, leg, lower unit',
  'hydraulic rams': 'rams, ram',
  'gimbal area': 'gimbal',
  'outboard lower unit': 'outboard, outboard leg, ob leg, obm',
  'cavitation plate': 'cavitation, cavit, cav plate, cav pl',
  propeller: 'prop, props',
  'prop shafts': 'shaft, shafts, prop shaft',
  'jet intake': 'jet, jet pump',
  bilge: 'bilges',
  'live well': 'livewell, live w',
  'bait well': 'baitwell, bait w',
  'ballast tank': 'ballast, ballast tanks',
  'wet locker': 'locker, ski locker',
  'cooling system': 'cooling',
  'anchor line': 'anchor rope, anch ln, rope, rode',
  'mooring lines': 'lines, dock lines',
  'life jackets': 'pfd, life vests',
  bunks: 'bunk, trailer bunk',
  rollers: 'roller',
  'tube openings': 'tube, tubes, frame tubes',
  'cross-members': 'cross members, frame, axle',
};

const sideWords: Readonly<Record<string, string>> = {
  p: 'port',
  port: 'port',
  left: 'port',
  babord: 'port',
  tribord: 'starboard',
  s: 'starboard',
  stbd: 'starboard',
  starboard: 'starboard',
  right: 'starboard',
  c: 'centre',
  centre: 'centre',
  center: 'centre',
};

const phrases = components.map(({ component }) => ({
  component,
  words: [component, ...[spoken, frenchParts].flatMap((words) => words[component]?.split(', ') ?? [])].map(wordsOf),
}));

/** A part named by a heading or a code, with its side and how well it is named, from 0 to 1; null for none. */
export function partNamed(
  text: string,
): { readonly component: string; readonly side: string; readonly likeness: number } | null {
  const all = wordsOf(text);
  const last = all.at(-1) ?? '';
  const sided = all.length > 1 && sideWords[last] !== undefined;
  const words = sided ? all.slice(0, -1) : all;
  let best: string | null = null;
  let most = 0.5;
  for (const { component, words: named } of phrases) {
    const like = Math.max(...named.map((phrase) => likeness(words, phrase)));
    if (like <= most) continue;
    best = component;
    most = like;
  }
  if (best === null) return null;
  return { component: best, side: sided ? sideWords[last]! : 'none', likeness: most };
}
