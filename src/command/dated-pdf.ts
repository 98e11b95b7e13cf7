/**
 * A PDF whose dates of creation and change are that moment, in milliseconds since 1970, instead of the clock's. Nothing else
 * that Chromium writes depends on the clock, so that the same page then gives the same bytes. The dates keep their length, on
 * which the table of places at the file's end stands.
 */
export function datedPdf(pdf: Buffer, moment: number): Buffer {
  const digits = new Date(moment).toISOString().replace(/\D/g, '').slice(0, 14);
  const text = pdf.toString('latin1');
  return Buffer.from(
    text.replace(/(\/(?:CreationDate|ModDate) \(D:)\d{14}[+-]\d\d'\d\d'/g, `$1${digits}+00'00'`),
    'latin1',
  );
}
