# The penalised likelihood of Firth 1993, log L + log det(information) / 2, climbed by R's own optim on the data of
# Heinze and Schemper 2002: what tests/statistic/firth.test.ts compares with. Rscript tests/reference/firth.R
options(digits = 12)
d <- read.csv("tests/reference/endometrial.csv")
X <- cbind(1, d$NV, d$PI, d$EH)
y <- d$HG
penalised <- function(b) {
  p <- plogis(drop(X %*% b))
  w <- p * (1 - p)
  sum(dbinom(y, 1, p, log = TRUE)) + as.numeric(determinant(crossprod(X * sqrt(w)))$modulus) / 2
}
climb <- function(f, start) {
  for (i in 1:40) start <- optim(start, f, method = if (i %% 2) "BFGS" else "Nelder-Mead",
                                 control = list(fnscale = -1, reltol = 1e-16, maxit = 5000, ndeps = rep(1e-5, length(start))))$par
  list(par = start, value = f(start))
}
top <- climb(penalised, c(3, 2, 0, -2))
print(top$par); print(top$value)
# The profile at NV: where it has fallen by half of the 95 % point of chi-squared with one degree of freedom.
profile <- function(b) climb(function(r) penalised(c(r[1], b, r[2], r[3])), top$par[-2])$value
goal <- top$value - qchisq(.95, 1) / 2
print(uniroot(function(b) profile(b) - goal, c(0, 2), tol = 1e-9)$root)
print(uniroot(function(b) profile(b) - goal, c(5, 12), tol = 1e-9)$root)
print(pchisq(2 * (top$value - profile(0)), 1, lower.tail = FALSE))
