# Product-limit curves per group with Greenwood's variance, median lives and the log-rank comparison
# by the package survival. Reads time, ended, group from the file that is given, or takes the
# package's set aml where the argument is "aml"; writes one "name value" a line, NA as nan.
suppressMessages(library(survival))
arguments <- commandArgs(trailingOnly = TRUE)
if (arguments[1] == "aml") {
  data <- data.frame(time = aml$time, ended = aml$status, group = as.integer(aml$x) - 1)
} else {
  data <- read.csv(arguments[1])
}
say <- function(name, value) cat(name, if (is.na(value)) "nan" else sprintf("%.17g", value), "\n")
for (g in sort(unique(data$group))) {
  own <- data[data$group == g, ]
  fit <- survfit(Surv(time, ended) ~ 1, data = own, conf.type = "log-log", conf.int = 0.9)
  se <- summary(fit, censored = TRUE)$std.err
  for (i in seq_along(fit$time)) {
    at <- sprintf("%d:%d:", as.integer(g), i - 1L)
    say(paste0(at, "time"), fit$time[i])
    say(paste0(at, "at_risk"), fit$n.risk[i])
    say(paste0(at, "ended"), fit$n.event[i])
    say(paste0(at, "survival"), fit$surv[i])
    say(paste0(at, "se"), se[i])
    say(paste0(at, "low"), fit$lower[i])
    say(paste0(at, "high"), fit$upper[i])
  }
  middle <- quantile(fit, 0.5)
  say(sprintf("%d:median", as.integer(g)), middle$quantile)
  say(sprintf("%d:median_low", as.integer(g)), middle$lower)
  say(sprintf("%d:median_high", as.integer(g)), middle$upper)
}
both <- survdiff(Surv(time, ended) ~ group, data = data)
say("chi_squared", both$chisq)
say("degrees", sum(both$exp > 0) - 1)
say("p", pchisq(both$chisq, sum(both$exp > 0) - 1, lower.tail = FALSE))
for (i in seq_along(both$obs)) {
  say(sprintf("%d:observed", i - 1L), both$obs[i])
  say(sprintf("%d:expected", i - 1L), both$exp[i])
}
