-- The exports as rows of cells. `exports` is the folder; every line is read as it stands and cut here, so that nothing is lost
-- that a reader of delimited text would mend or drop unasked.

-- A line number is that of the file, from 1. The mark of the byte order is no text; neither is a carriage return.
create table files as
select row_number() over (order by file) as number, file,
  -- The roads' forms part cells by semicolons, the two others by commas (`dialect` of each crosswalk).
  if(file like 'roads/%', ';', ',') as delimiter
from (select regexp_extract(file, '(lakes|roads|office)/[^/]*$') as file from glob(getvariable('exports') || '/*/*.csv'));
create table lines as
select number * 10000000 + line as id, file, line, delimiter, text, len(text) - len(replace(text, '"', '')) as quotes
from (
  select regexp_extract(filename, '(lakes|roads|office)/[^/]*$') as file, unnest(range(1, len(texts) + 1)) as line, unnest(texts) as text
  from (
    select filename, string_split(replace(ltrim(content, chr(65279)), chr(13), ''), chr(10)) as texts
    from read_text(getvariable('exports') || '/*/*.csv')
  )
) join files using (file);

-- A line with an odd number of quotes leaves one open. Where the next line closes it, the two are one row: a remark that runs
-- over two lines (none runs over three). Where it does not, nobody closed the quote, and the row ends with its line.
create table odd_lines as
select id, lead(id) over (order by id) = id + 1 as opens, lag(id) over (order by id) = id - 1 as closes
from lines where quotes % 2 = 1;
create view cut as
select id, file, line, delimiter, text, quotes, false as is_broken from lines where quotes % 2 = 0 union all
select id, file, line, delimiter, text, quotes, true from lines join odd_lines using (id)
where not coalesce(opens or closes, false) union all
select one.id, one.file, one.line, one.delimiter, one.text || chr(10) || next.text, one.quotes, false
from lines as one join odd_lines using (id) join lines as next on next.id = one.id + 1 where opens;

-- The first line is the header. A line without text is no row, and neither is a header that stands again within a file, where
-- several exports were put together: they are not read, and so neither kept nor set aside nor left out.
create table headers as select file, text as header, string_split(text, delimiter) as names from lines where line = 1;
create macro quoted_cells(text, delimiter) as [
  if(cell like '"%', replace(cell[2:-2], '""', '"'), cell)
  for cell in regexp_extract_all(text, '(?:^|' || delimiter || ')("(?:[^"]|"")*"|[^' || delimiter || ']*)', 1)];
create table rows as
select id, file, line, is_broken, len(names) as width,
  if(quotes = 0 or is_broken, string_split(text, delimiter), quoted_cells(text, delimiter)) as cells
from cut join headers using (file) where line > 1 and text <> '' and text <> header;

-- What is wrong with a row: it is set aside for each reason, and counted once. No crosswalk of the basin leaves rows out by a rule.
create table faults (id bigint, code varchar);
insert into faults select id, 'unterminated-quote' from rows where is_broken;
insert into faults select id, 'ragged-row' from rows where not is_broken and len(cells) <> width;

-- Rows whose cells stand where the header says; only these are read further.
create view whole as select * from rows where not is_broken and len(cells) = width;
