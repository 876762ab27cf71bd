# Ordinary kriging by gstat, timed inside R; raw little-endian floats out.
# usage: Rscript kriging.R CSV NMAX CELL_M [OUT]     (NMAX 0 = all points)
suppressMessages({ library(gstat); library(sp) })
a <- commandArgs(TRUE)
d <- read.csv(a[1]); nmax <- as.integer(a[2]); cell <- as.numeric(a[3])
coordinates(d) <- ~ x + y
g <- expand.grid(x = seq(cell / 2, 2000, cell), y = rev(seq(cell / 2, 2000, cell)))
coordinates(g) <- ~ x + y
m <- vgm(3, "Sph", 250, 0.1)
t <- system.time(k <- if (nmax > 0) krige(z ~ 1, d, g, m, nmax = nmax, debug.level = 0)
                      else krige(z ~ 1, d, g, m, debug.level = 0))
cat(t[["elapsed"]], "\n")
if (length(a) > 3) {
  con <- file(a[4], "wb")
  writeBin(c(k$var1.pred, k$var1.var), con, size = 4, endian = "little")
  close(con)
}
