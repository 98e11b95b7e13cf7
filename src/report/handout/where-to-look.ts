/** What an inspector takes along to look at parts. */
export type Tool = 'light' | 'mirror' | 'bare fingertips' | 'magnifier' | 'inspection camera' | 'kneeling mat';

/** How a part is looked at: one short sentence, and what helps. */
export interface WayToLook {
  readonly look: string;
  readonly tools: readonly Tool[];
}

const way = (look: string, ...tools: readonly Tool[]): WayToLook => ({ look, tools });

/** How to look at each part of the catalogue. Common practice, no source. */
export const waysToLook: Readonly<Record<string, WayToLook>> = {
  'hull below waterline': way(
    'Walk both sides low; draw fingertips along strakes and chines, feeling for grit.',
    'bare fingertips',
    'kneeling mat',
  ),
  waterline: way('Follow the scum line all round; feel beneath it.', 'bare fingertips'),
  'seams and welds': way('Run a fingertip along every seam, lap and weld.', 'bare fingertips'),
  'through-hull fittings': way('Light into each opening; feel just inside the rim.', 'light', 'bare fingertips'),
  'water intakes': way('Light through the slots and screens; look behind them.', 'light', 'magnifier'),
  transom: way('Look under brackets and along the lower edge.', 'light'),
  'trim tabs and rams': way(
    'Look above and behind each tab, at the hinge, and at the ram ends.',
    'mirror',
    'light',
    'bare fingertips',
  ),
  transducer: way('Look behind the bracket and along its wire.', 'mirror', 'light'),
  'speed indicator': way('Look into the tube and behind its foot.', 'light', 'magnifier'),
  zincs: way('Look round the edges and bolts.', 'light'),
  'swim platform': way('Get below it: brackets, bolts and the ladder’s tracks.', 'mirror', 'light', 'kneeling mat'),
  rudder: way('Look at pintles and the gap at the hull; feel both faces.', 'light', 'bare fingertips'),
  centreboard: way('Light up the case; look along the pin and the slot’s lips.', 'light', 'inspection camera'),
  'outdrive lower unit': way(
    'Look round the leg’s folds and bolt recesses; feel the skeg.',
    'light',
    'bare fingertips',
  ),
  'exhaust hub': way('Light into the hub between the blades.', 'light', 'inspection camera'),
  'cavitation plate': way('Feel its underside, where it is hidden from above.', 'mirror', 'bare fingertips'),
  'hydraulic rams': way('Look behind the rams and along hoses.', 'mirror', 'light'),
  'gimbal area': way(
    'Have the drive turned to each side; look into the folds of the bellows.',
    'mirror',
    'light',
    'bare fingertips',
  ),
  'outboard lower unit': way('Tilt up; look into bolt recesses and round the skeg.', 'light', 'bare fingertips'),
  propeller: way('Look at the roots of the blades and behind the propeller.', 'light'),
  'prop shafts': way('Follow shaft and strut; feel round the bearing.', 'light', 'bare fingertips'),
  'jet intake': way('Lie low; light through the grate to the impeller.', 'light', 'mirror', 'kneeling mat'),
  'trolling motor': way('Look under the head and at the propeller’s root.', 'light'),
  bilge: way('Open the hatches; light to the lowest corner; is there water?', 'light'),
  hold: way('Empty it; look into corners and drains.', 'light'),
  'live well': way('Lift the screen; light into drain and overflow; is there water?', 'light'),
  'bait well': way('Lift the lid; look at drain and aerator; is there water?', 'light'),
  'ballast tank': way('Find the fill and the vents; ask what it last held.', 'light', 'inspection camera'),
  'ballast bag': way('Unroll it; look at the valve; is there water?', 'light'),
  'wet locker': way('Empty it; look at the drain.', 'light'),
  'cooling system': way('Ask when it last ran and where; look at its strainer.', 'light'),
  anchor: way('Look at the joints and in mud on the flukes.', 'light'),
  'anchor line': way('Pay it out; draw it through the fingers.', 'bare fingertips', 'magnifier'),
  'mooring lines': way('Pay them out; look into splices and eyes.', 'bare fingertips', 'magnifier'),
  fenders: way('Turn them; look at the seams and the eye.', 'light'),
  'life jackets': way('Feel for damp and grit at straps and seams.', 'bare fingertips'),
  gear: way('Empty bags; look at whatever has been wet.', 'light'),
  bunks: way('Feel the carpet and look under its ends.', 'light', 'bare fingertips'),
  rollers: way('Turn each; look at its axle and bracket.', 'light'),
  brackets: way('Look behind and between the plates.', 'mirror', 'light'),
  'tube openings': way('Light into each open end and drain hole.', 'light', 'inspection camera'),
  'cross-members': way('Get below; look at the upper faces and the joints.', 'mirror', 'light', 'kneeling mat'),
};

/** Tools in the order they are named on a handout. */
export const tools: readonly Tool[] = [
  'light',
  'mirror',
  'bare fingertips',
  'magnifier',
  'inspection camera',
  'kneeling mat',
];
