const longestName = 60;

/** Names that some systems keep for devices, whatever ending stands behind them. */
const deviceName = /^(con|prn|aux|nul|com[0-9]|lpt[0-9])$/i;

/**
 * The file's name of a new notebook from the name that somebody typed, with or without `.md`; or why no notebook can have it.
 * Letters without accents, digits, hyphens and underscores only, so that the file keeps its name on every system.
 */
export function newNotebookName(typed: string): { readonly file: string } | { readonly refused: string } {
  const name = typed.trim().replace(/\.md$/i, '').replace(/ +/g, '-');
  if (name === '') return { refused: 'a notebook needs a name' };
  if (name.length > longestName) return { refused: `a name has no more than ${longestName} letters` };
  if (!/^[a-z0-9][a-z0-9_-]*$/i.test(name)) {
    return {
      refused: 'a name has letters without accents, digits, hyphens and underscores, and begins with a letter or digit',
    };
  }
  if (deviceName.test(name)) return { refused: `some systems keep the name ${name} for a device` };
  return { file: `${name}.md` };
}

/** A small notebook to begin from: one input, a few figures and a sheet, of the season given. */
export function newNotebookText(file: string, season: string): string {
  const words = file.replace(/\.md$/i, '').replace(/[-_]+/g, ' ').trim();
  const title = words.charAt(0).toUpperCase() + words.slice(1);
  return `---
for: whoever reads it
---

# ${title}

In {this_season} inspectors looked over {inspected} craft and found mussels on {intercepted} of them, {interception}.

## What this page assumes

| input       | value | unit | source              |
|-------------|-------|------|---------------------|
| this_season | ${season.padEnd(5)} | year | the season reported |

| selection | rows                                                         |
|-----------|--------------------------------------------------------------|
| full      | inspections where season is this_season and extent is "full" |

## Figures

| figure       | formula                                    | shown as  |
|--------------|--------------------------------------------|-----------|
| inspected    | count(full)                                | whole     |
| intercepted  | count(full where outcome is "intercepted") | whole     |
| interception | rate(intercepted, inspected)               | per 1,000 |

Sheet by_station "Inspections and interceptions, by station": each station of full, highest inspected first.

| column       | formula                               | shown as  |
|--------------|---------------------------------------|-----------|
| inspected    | count()                               | whole     |
| intercepted  | count(where outcome is "intercepted") | whole     |
| interception | rate(intercepted, inspected)          | per 1,000 |
`;
}
