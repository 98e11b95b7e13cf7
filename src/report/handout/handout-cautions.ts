/** What stands at the foot of every handout. Common practice, no source. */
export const handoutCautions: readonly string[] = [
  'Engine off, key out, wheels chocked, trailer on level ground; never under a craft that is not held.',
  'Shells, blades and torn metal cut; spring and hydraulic parts pinch. Feel slowly.',
  'Mind traffic, fuel vapour in closed spaces, and slippery decks.',
  'This sheet says where to look, not how to wash: hot water scalds, pressure pierces skin, chemicals and wash water are regulated.',
  'Local code, permits, the maker’s instructions and licensed practice decide.',
];
