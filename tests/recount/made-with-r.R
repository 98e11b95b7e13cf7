# Writes made-with-r.json: the limits of the demo's waits that closed forms do not give, by R's survival library. First
# `npx tsx tests/recount/write-waits.ts /tmp/waits.csv`, then `Rscript tests/recount/made-with-r.R /tmp/waits.csv > FILE`
# (R 4.2.2, survival 3.5-3), and `npx biome check --write FILE`. One row of waits.csv is a stage of a wash of 2025: stage, station-day, minutes, course.
suppressPackageStartupMessages(library(survival))
options(digits = 17)
path <- commandArgs(trailingOnly = TRUE)[1]
waits <- read.csv(path, stringsAsFactors = FALSE)
target <- 90

number <- function(x) if (is.na(x)) "null" else formatC(x, digits = 12, format = "g", flag = "#")
several <- function(...) paste0("[", paste(sapply(c(...), number), collapse = ","), "]")

# A share that came to one end by some minutes, the other end competing: Aalen-Johansen. How much each wash moves it is R's (the
# infinitesimal jackknife); those of one station-day are added up before they are squared, since survfit's cluster has no bearing on
# several ends. Limits on log(-log F), as survfit's log-log. Where nobody came to that end there are none.
incidence <- function(rows, end, minutes) {
  rows$end <- factor(rows$course, levels = c("open", "done", "left"))
  fit <- survfit(Surv(minutes, end) ~ 1, data = rows, id = seq_len(nrow(rows)), influence = TRUE)
  column <- match(end, fit$states)
  at <- sum(fit$time <= minutes)
  share <- fit$pstate[at, column]
  if (share == 0) return(several(0))
  error <- sqrt(sum(tapply(fit$influence.pstate[, at + 1, column], rows$day, sum)^2))
  half <- qnorm(0.975) * error / (share * -log(share))
  several(share, exp(-exp(log(-log(share)) + half)), exp(-exp(log(-log(share)) - half)))
}

# Minutes until a share was through: Kaplan-Meier with log-log limits, craft that left followed until then.
times <- function(rows, share) {
  fit <- survfit(Surv(minutes, course == "done") ~ 1, data = rows, conf.type = "log-log")
  until <- quantile(fit, share)
  several(until$quantile, until$lower, until$upper)
}
mean_to <- function(rows) {
  fit <- survfit(Surv(minutes, course == "done") ~ 1, data = rows)
  table <- survival:::survmean(fit, rmean = max(rows$minutes))$matrix
  several(table[["rmean"]], table[["rmean"]] - qnorm(0.975) * table[["se(rmean)"]], table[["rmean"]] + qnorm(0.975) * table[["se(rmean)"]])
}

stages <- c("wait", "washing", "hold", "turnaround")
lines <- sapply(stages, function(stage) {
  rows <- waits[waits$stage == stage, ]
  sprintf('"%s":{"washes":%d,"median":%s,"p80":%s,"p90":%s,"mean_to_horizon":%s,"inside":%s,"left_share":%s}', stage, nrow(rows),
    times(rows, 0.5), times(rows, 0.8), times(rows, 0.9), mean_to(rows), incidence(rows, "done", target),
    incidence(rows, "left", max(rows$minutes)))
})
cat(sprintf('{"made_with":"%s, survival %s","sha256":"%s","stages":{\n%s\n}}\n', R.version.string, packageVersion("survival"),
  system2("sha256sum", path, stdout = TRUE) |> substr(1, 64), paste(lines, collapse = ",\n")))
