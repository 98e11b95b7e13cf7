-- How long the stages of a wash took: from order to start (wait), start to end (washing), end to release (hold), and from order to
-- release (turnaround), in minutes of elapsed time.

-- A stage was seen to end where both of its moments are recorded. A craft that left unwashed is followed until it left, and its
-- leaving is no end of a wash. What is open when the records end is followed until then. A stage that had not begun, or whose end
-- was passed and not written down, is unknown.
create table stages as
select wash, station, season, reason, started::date as day, dayname(started) as weekday, hour(started) as hour, stage,
  case
    when began is null then 'unknown'
    when ended is not null and not (stage in ('hold', 'turnaround') and has_left) then 'done'
    when has_left then 'left'
    when has_passed or ending = 'released' then 'unknown'
    else 'open' end as course,
  coalesce(if(stage in ('hold', 'turnaround') or not has_left, ended, null), if(has_left, minute_of[4], null), cut_off()) - began as minutes
from (
  select number as wash, station, season, reason, ending, inspected_at as started, minute_of, coalesce(ending = 'left unwashed', false) as has_left,
    unnest(['wait', 'washing', 'hold', 'turnaround']) as stage,
    unnest([minute_of[1], minute_of[2], minute_of[3], minute_of[1]]) as began,
    unnest([minute_of[2], minute_of[3], minute_of[4], minute_of[4]]) as ended,
    unnest([coalesce(minute_of[3], minute_of[4]) is not null, minute_of[4] is not null, false, false]) as has_passed
  from washes
);

-- The curve of each group (Kaplan and Meier 1958, JASA 53:457-481): at each time those that ended, those that left, and those still
-- followed just before; the share not through; the sum that Greenwood's variance stands on; and, every end counted, the share
-- through by then with those that left as a competing end (Aalen and Johansen 1978, Scand J Statist 5:141-150).
create macro curve_of(chosen) as table
with times as (
  select grouped, minutes, count(*) filter (course = 'done') as done, count(*) filter (course = 'left') as gone, count(*) as leaving
  from query_table(chosen) where course <> 'unknown' group by grouped, minutes
), risk as (
  select *, sum(leaving) over (partition by grouped order by minutes desc) as at_risk from times
), shares as (
  select *, product(1 - done / at_risk) over so_far as survival,
    sum(if(done < at_risk, done / (at_risk * (at_risk - done)), 0)) over so_far as greenwood,
    coalesce(product(1 - (done + gone) / at_risk) over (partition by grouped order by minutes rows between unbounded preceding and 1 preceding), 1)
      as still_there
  from risk window so_far as (partition by grouped order by minutes)
)
select grouped, minutes, done::integer as done, at_risk::integer as at_risk, survival, greenwood,
  sum(still_there * done / at_risk) over (partition by grouped order by minutes) as through,
  sum(still_there * gone / at_risk) over (partition by grouped order by minutes) as gone
from shares order by grouped, minutes;

create view waits_by_stage as select *, stage as grouped from stages where season = 2025;
create view waits_by_reason as select *, reason || '/' || stage as grouped from stages where season = 2025;
create view waits_by_station as select *, station || '/' || stage as grouped from stages where season = 2025;
create view waits_by_weekday as select *, weekday || '/' || stage as grouped from stages where season = 2025;
create view waits_by_hour as select *, hour || '/' || stage as grouped from stages where season = 2025;
