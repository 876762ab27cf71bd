# Leave-one-out by gstat's krige.cv, timed inside R.
# usage: Rscript crossvalidation.R CSV
suppressMessages({ library(gstat); library(sp) })
d <- read.csv(commandArgs(TRUE)[1])
coordinates(d) <- ~ x + y
m <- vgm(3, "Sph", 250, 0.1)
t <- system.time(k <- krige.cv(z ~ 1, d, m, nfold = nrow(d), verbose = FALSE, debug.level = 0))
cat(t[["elapsed"]], "\n")
