/** The media condition of a screen on which drawings stand in their narrow form. */
export const narrowScreen = '(max-width:36rem)';
