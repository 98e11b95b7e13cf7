/** A path's last part: a page is the same whichever folder its notebook was named from. */
export function fileName(path: string): string {
  return path.replace(/^.*[\\/]/, '');
}
