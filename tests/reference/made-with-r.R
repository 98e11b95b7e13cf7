# Writes made-with-r.json: random small cases answered by R's own stats and survival libraries, in the form of
# statistics.json. Run with `Rscript made-with-r.R > made-with-r.json` (R 4.2.2, survival 3.5-3).
suppressPackageStartupMessages(library(survival))
options(digits = 17, warn = -1)
set.seed(20240611)

number <- function(x) {
  if (is.nan(x)) '"NaN"'
  else if (is.na(x)) '"NA"'
  else if (is.infinite(x)) if (x > 0) '"Inf"' else '"-Inf"'
  else formatC(x, digits = 16, format = "g")
}
json <- function(v) {
  if (is.list(v) && is.null(names(v))) return(paste0("[", paste(sapply(v, json), collapse = ","), "]"))
  if (is.list(v)) return(paste0("{", paste(sprintf('"%s":%s', names(v), sapply(v, json)), collapse = ","), "}"))
  if (is.character(v)) return(sprintf('"%s"', v))
  if (inherits(v, "several")) return(paste0("[", paste(sapply(unclass(v), number), collapse = ","), "]"))
  number(v)
}
several <- function(v) structure(as.numeric(v), class = "several")
cases <- list()
add <- function(made_by, method, inputs, expected) {
  id <- paste0(gsub("[^a-z]+", "-", made_by), "-", length(cases) + 1)
  citation <- paste("R 4.2.2,", made_by)
  cases[[length(cases) + 1]] <<-
    list(id = id, method = method, inputs = inputs, expected = expected, rel_tol = 1e-8, citation = citation)
}
ends <- function(test) list(lower = test$conf.int[1], upper = test$conf.int[2])

one_share <- function(conf) {
  n <- sample(c(5, 30, 400, 20000), 1)
  x <- rbinom(1, n, sample(c(.002, .1, .6), 1))
  counts <- list(x = x, n = n, conf = conf)
  add("binom.test", "binom.clopper_pearson", counts, ends(binom.test(x, n, conf.level = conf)))
  add("prop.test", "binom.wilson", counts, ends(prop.test(x, n, conf.level = conf, correct = FALSE)))
  add("prop.test corrected", "binom.wilson_cc", counts, ends(prop.test(x, n, conf.level = conf)))
  p0 <- round(runif(1), 3)
  add("binom.test", "binom.exact_test", list(x = x, n = n, p0 = p0), list(p_value = binom.test(x, n, p0)$p.value))
}
rates <- function(conf) {
  e <- round(runif(1, .5, 60), 2)
  x <- rpois(1, e * runif(1, .3, 2))
  test <- poisson.test(x, e, conf.level = conf)
  add("poisson.test", "poisson.exact", list(x = x, exposure = e, conf = conf), c(list(rate = x / e), ends(test)))
  test <- poisson.test(x, 1, r = e)
  add("poisson.test", "std.indirect", list(observed = x, expected = e), list(smr = x / e, p_exact_two_sided = test$p.value))
  x1 <- rpois(1, 4)
  x2 <- rpois(1, 6) + 1
  t <- round(runif(2, 1, 90), 1)
  test <- poisson.test(c(x1, x2), t, conf.level = conf)
  add("poisson.test", "poisson.rate_ratio", list(x1 = x1, t1 = t[1], x2 = x2, t2 = t[2], conf = conf),
      c(list(ratio = unname(test$estimate), p = test$p.value), ends(test)))
}
tables <- function() {
  m <- matrix(rpois(4, c(5, 40, 3, 60)[sample(4)]) + 1, 2)
  rows <- list(table = list(several(m[1, ]), several(m[2, ])))
  test <- fisher.test(m)
  add("fisher.test", "fisher.exact", rows,
      list(p_two_sided = test$p.value, p_greater = fisher.test(m, alternative = "greater")$p.value))
  test <- chisq.test(m, correct = FALSE)
  yates <- chisq.test(m)
  add("chisq.test", "chisq.independence", rows, list(x2 = unname(test$statistic), p = test$p.value,
      x2_yates = unname(yates$statistic), p_yates = yates$p.value))
  b <- m[1, 2]
  c <- m[2, 1]
  if (b != c) {
    test <- mcnemar.test(m, correct = FALSE)
    yates <- mcnemar.test(m)
    add("mcnemar.test", "paired.mcnemar", list(b = b, c = c), list(chi2 = unname(test$statistic),
        p_asymptotic = test$p.value, chi2_cc = unname(yates$statistic), p_cc = yates$p.value,
        p_exact = binom.test(b, b + c)$p.value))
  }
  m <- matrix(rpois(12, 20), 3)
  test <- chisq.test(m)
  add("chisq.test", "chisq.independence", list(table = lapply(1:3, function(i) several(m[i, ]))),
      list(x2 = unname(test$statistic), df = unname(test$parameter), p = test$p.value))
  a <- array(rpois(12, c(6, 30, 4, 25)), c(2, 2, 3))
  test <- mantelhaen.test(a, correct = FALSE)
  corrected <- mantelhaen.test(a)
  add("mantelhaen.test", "stratified.mantel_haenszel", list(strata = lapply(1:3, function(i) several(t(a[, , i])))),
      list(or_mh = unname(test$estimate), or_lower_rbg = test$conf.int[1], or_upper_rbg = test$conf.int[2],
           cmh_chi2 = unname(test$statistic), cmh_p = test$p.value, cmh_chi2_cc = unname(corrected$statistic)))
}
trends <- function() {
  k <- sample(3:6, 1)
  n <- rpois(k, 500)
  x <- rbinom(k, n, .03)
  s <- cumsum(runif(k))
  counts <- list(x = several(x), n = several(n), scores = several(s))
  test <- prop.trend.test(x, n, s)
  add("prop.trend.test", "trend.cochran_armitage", counts, list(chi2 = unname(test$statistic), p = test$p.value))
  fit <- glm(cbind(x, n - x) ~ s, binomial, control = list(epsilon = 1e-15, maxit = 60))
  row <- summary(fit)$coef
  add("glm binomial to the end", "trend.logistic", counts, list(intercept = row[1, 1], slope = row[2, 1], se = row[2, 2],
      p_wald = row[2, 4], residual_deviance = deviance(fit), lr_chi2 = fit$null.deviance - deviance(fit)))
  e <- runif(k, 50, 200)
  y <- rpois(k, e * .1) + 1
  row <- summary(glm(y ~ s + offset(log(e)), family = poisson))$coef
  add("glm poisson", "trend.poisson", list(x = several(y), exposure = several(e), scores = several(s)),
      list(slope = row[2, 1], se = row[2, 2], p_wald = row[2, 4]))
}
lists <- function() {
  p <- c(runif(6)^3, .01, .01)
  adjust <- function(how) several(p.adjust(p, how))
  add("p.adjust", "padjust", list(p = several(p)), list(bonferroni = adjust("bonferroni"), holm = adjust("holm"),
      hochberg = adjust("hochberg"), bh = adjust("BH")))
  x <- round(rexp(sample(2:40, 1), .1), 1)
  probs <- round(runif(5), 2)
  by_type <- lapply(1:9, function(type) several(quantile(x, probs, type = type, names = FALSE)))
  names(by_type) <- paste0("type", 1:9)
  add("quantile", "quantile.hyndman_fan", list(x = several(x), probs = several(probs)), by_type)
}
waits <- function(conf) {
  n <- sample(c(6, 40, 120), 1)
  time <- ceiling(rexp(n, .03) * sample(c(1, 2, 10), 1)) / 2
  status <- rbinom(n, 1, .8)
  tau <- max(1, floor(max(time) * .8))
  fit <- survfit(Surv(time, status) ~ 1, conf.type = "log-log", conf.int = conf)
  at <- summary(fit)
  q <- quantile(fit, c(.25, .5, .75))
  mean <- summary(fit, rmean = tau)$table
  add("survfit", "surv.kaplan_meier",
      list(time = several(time), status = several(status), conf = conf, tau = tau),
      list(times = several(at$time), n_risk = several(at$n.risk), n_event = several(at$n.event),
           surv = several(at$surv), se_greenwood = several(at$std.err), lower_loglog = several(at$lower),
           upper_loglog = several(at$upper), q25 = unname(q$quantile[1]), median = unname(q$quantile[2]),
           q75 = unname(q$quantile[3]), median_lower = unname(q$lower[2]), median_upper = unname(q$upper[2]),
           rmst = unname(mean["rmean"]), rmst_se = unname(mean["se(rmean)"])))
  group <- c(1, 2, sample(1:sample(2:4, 1), n - 2, TRUE))
  test <- survdiff(Surv(time, status) ~ group)
  add("survdiff", "surv.logrank", list(time = several(time), status = several(status), group = several(group)),
      list(observed = several(test$obs), expected = several(test$exp), chi2 = test$chisq, df = sum(test$exp > 0) - 1))
  cause <- ifelse(status == 0, 0, c(1, 2, sample(1:2, n - 2, TRUE)))
  at <- unname(quantile(time, c(.1, .5, .8), type = 1))
  fit <- survfit(Surv(time, factor(cause, levels = 0:2)) ~ 1)
  share <- summary(fit, times = at)$pstate
  add("survfit multi-state", "surv.cumulative_incidence",
      list(time = several(time), cause = several(cause), at = several(at)),
      list(cif_cause1 = several(share[, 2]), cif_cause2 = several(share[, 3])))
}

for (round in 1:6) {
  conf <- sample(c(.9, .95, .99, .998), 1)
  one_share(conf)
  rates(conf)
  tables()
  trends()
  lists()
  waits(conf)
}
about <- list(made_with = R.version.string, survival = as.character(packageVersion("survival")), seed = 20240611)
cat('{"about":', json(about), ',"cases":[\n', paste(sapply(cases, json), collapse = ",\n"), "\n]}\n", sep = "")
