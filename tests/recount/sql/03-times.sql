-- Days, moments and numbers as the exports write them.

create macro lake_day(cell) as try_strptime(cell, '%m/%d/%Y');
create macro lake_moment(cell) as try_strptime(cell, '%m/%d/%Y %I:%M %p');
create macro road_day(cell) as try_strptime(cell, '%d.%m.%Y');
create macro road_moment(cell) as try_strptime(cell, '%d.%m.%Y %H:%M');

-- What is wrong with a moment, or null. A day that the calendar lacks is told from a time that the clock lacks.
create macro moment_fault(cell, day, moment) as case
  when cell is null then null
  when moment is null then if(day is null, 'not-a-date', 'not-a-time')
  when is_skipped(moment) then 'no-such-local-time'
  when is_repeated(moment) then 'ambiguous-local-time' end;

-- Summer time in both zones: from two o’clock of the second Sunday of March, when the clocks skip an hour, to two o’clock of
-- the first Sunday of November, when the hour from one to two comes twice. Energy Policy Act of 2005, 15 USC 260a.
create macro sunday_from(day) as day + (7 - dayofweek(day))::integer % 7;
create macro is_skipped(moment) as
  moment::date = sunday_from(make_date(year(moment), 3, 8)) and hour(moment) = 2;
create macro is_repeated(moment) as
  moment::date = sunday_from(make_date(year(moment), 11, 1)) and hour(moment) = 1;
-- Such a moment is none: nothing is held against it.
create macro known_moment(moment) as if(is_skipped(moment) or is_repeated(moment), null, moment);
create macro is_summer(moment) as
  moment >= sunday_from(make_date(year(moment), 3, 8)) + interval 3 hours
  and moment < sunday_from(make_date(year(moment), 11, 1)) + interval 1 hour;

-- Minutes since 1970 in universal time, from a moment and the hours by which standard time lies behind: 7 for the lakes’
-- Mountain time, 8 for the roads’ Pacific time.
create macro minutes_utc(moment, behind) as epoch(moment) / 60 + 60 * (behind - if(is_summer(moment), 1, 0));

-- The records end on 2025-11-30 at 18:00 Mountain time, which is 17:00 Pacific time.
create macro cut_off() as epoch(timestamp '2025-12-01 01:00') / 60;

-- A number, with a point or (roads) a comma. It is none where anything else stands in the cell.
create macro written_number(cell) as if(regexp_full_match(cell, '[+-]?\d+(\.\d+)?'), cell::double, null);
create macro comma_number(cell) as if(contains(cell, '.'), null, written_number(replace(cell, ',', '.')));
create macro number_fault(cell, value, least, most) as case
  when cell is null then null
  when value is null then 'not-a-number'
  when value < least or value > most then 'out-of-range' end;
