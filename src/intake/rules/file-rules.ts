import type { Rule } from './rule.js';

function stops(code: string, meaning: string, remedy: string): Rule {
  return { code, scope: 'files', severity: 'stops', instead: [], meaning, remedy };
}

/** What stops an import as a whole: nothing is stored until it is mended. */
export const fileRules: readonly Rule[] = [
  stops('no-such-file', 'a crosswalk or export is not where it should be', 'Put it there, or mend the path.'),
  stops('is-a-folder', 'a folder stands where a file was wanted', 'Name the files in it.'),
  stops('unreadable-file', 'the file may not be read', 'Ask for the right to read it.'),
  stops('empty-file', 'the file has no header', 'Export it again, or take it out of the crosswalk.'),
  stops('no-header', 'the header line has no heading that the crosswalk knows', 'Look at header_line and delimiter.'),
  stops('unknown-column', 'the file has a column that the crosswalk does not name', 'Name it, if only as ignore.'),
  stops('missing-column', 'the crosswalk names a column that the file lacks', 'Export it again, or take it out.'),
  stops('repeated-column', 'two columns have the same heading', 'Rename one of them in the export.'),
  stops('encoding-in-doubt', 'the first bytes speak against the declared encoding', 'Declare the right one.'),
  stops(
    'not-text',
    'an archive or old workbook stands where text was declared',
    'Give it its right ending, or export text.',
  ),
  stops('which-member', 'an archive or workbook holds several files or sheets', 'Name the one meant.'),
  stops('damaged-archive', 'the archive is cut short or spoilt', 'Export or copy it again.'),
  stops('damaged-workbook', 'the workbook is spoilt, or is none', 'Save or copy it again.'),
  stops('locked-archive', 'the file stands under a password', 'Unpack it first.'),
  stops(
    'too-large-unpacked',
    'unpacked it is larger than the crosswalk allows',
    'Look at it; raise unpacked_mib if it is right.',
  ),
  stops('row-too-long', 'more than 16 million bytes without a line end', 'Look whether it is the right file.'),
  stops('file-changed', 'the file was written to while it was read', 'Import again once nothing writes to it.'),
  stops('seasons-share-file', 'a file has rows of a withdrawn season and of others', 'Export its seasons apart.'),
  stops('short-key', 'the key of the pseudonyms can be guessed', 'Make one of at least 16 bytes.'),
  stops('key-in-project', 'the key lies where whoever is given the project is given it too', 'Move it elsewhere.'),
];
