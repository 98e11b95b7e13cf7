# 2,000 resamples of ranks over 50,000 fouled craft and 30 parts in R, vectorised: drawing craft as weights and adding up
# by crossprod; and with craft alike grouped first, as our own does. Rscript tests/bench/ranks.R
set.seed(5)
n <- 50000
X <- sapply(.02 + .2 * exp(-(0:29) / 5), function(p) rbinom(n, 1, p))
ranked <- function(totals) {
  R <- apply(-totals, 2, rank)
  list(apply(R, 1, quantile, c(.025, .975), type = 1), rowMeans(R <= 10))
}
plain <- function() {
  totals <- do.call(cbind, lapply(1:20, function(block) {
    W <- matrix(0, n, 100)
    for (i in 1:100) W[, i] <- tabulate(sample.int(n, n, TRUE), n)
    crossprod(X, W)
  }))
  ranked(totals)
}
grouped <- function() {
  key <- do.call(paste0, as.data.frame(X))
  first <- !duplicated(key)
  W <- rmultinom(2000, n, tabulate(match(key, key[first])))
  ranked(crossprod(X[first, ], W))
}
cat(sprintf("vectorised %.2f s\n", median(replicate(3, system.time(plain())[3]))))
cat(sprintf("grouped %.2f s\n", median(replicate(3, system.time(grouped())[3]))))
