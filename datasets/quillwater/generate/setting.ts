/** Where a station stands. */
export type Setting = 'launch' | 'roadside' | 'border';
