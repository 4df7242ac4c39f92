# One REML fit by lme4 of y = start of each life + rate + spread of rates + shift of the session.
# Reads life, session, x, kind, y from the file that is given; writes one "name value" a line.
# Without x:kind where there is one kind. With a second argument: the median time of so many fits.
suppressMessages(library(lme4))
arguments <- commandArgs(trailingOnly = TRUE)
data <- read.csv(arguments[1], colClasses = c(life = "character", session = "character"))
data$life <- factor(data$life, levels = unique(data$life))
data$session <- factor(data$session, levels = unique(data$session))
form <- y ~ 0 + life + x + (0 + x | life) + (1 | session)
if (length(unique(data$kind)) > 1)
  form <- y ~ 0 + life + x + x:kind + (0 + x | life) + (1 | session)
if (length(arguments) > 1) {
  times <- replicate(as.integer(arguments[2]), system.time(suppressMessages(suppressWarnings(
    lmer(form, data, REML = TRUE))))["elapsed"])
  cat(sprintf("median_ms %.6f\n", 1000 * median(times)))
  quit()
}
control <- lmerControl(optimizer = "bobyqa", calc.derivs = FALSE, check.conv.singular = "ignore",
                       optCtrl = list(rhobeg = 0.02, rhoend = 1e-11, maxfun = 1e6))
fit <- suppressMessages(lmer(form, data, REML = TRUE, control = control))
# Once more from the optimum: the optimiser's last steps are short.
fit <- suppressMessages(update(fit, start = getME(fit, "theta")))
say <- function(name, value) cat(sprintf("%s %.17g\n", name, value))
say("sigma", sigma(fit))
say("tau", attr(VarCorr(fit)$life, "stddev"))
say("sigma_c", attr(VarCorr(fit)$session, "stddev"))
kind <- if ("x:kind" %in% names(fixef(fit))) fixef(fit)["x:kind"] else 0
for (life in levels(data$life))
  say(paste0("slope:", life), fixef(fit)["x"] + ranef(fit)$life[life, "x"] +
        kind * data$kind[match(life, data$life)])
for (session in levels(data$session))
  say(paste0("shift:", session), ranef(fit)$session[session, 1])
