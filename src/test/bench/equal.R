# Largest differences of two results of raw floats: estimates and variances; and how many cells differ.
# usage: Rscript equal.R A B
a <- commandArgs(TRUE)
n <- file.size(a[1]) / 4
x <- readBin(a[1], "numeric", n, size = 4, endian = "little")
y <- readBin(a[2], "numeric", n, size = 4, endian = "little")
d <- abs(x - y) / pmax(1, abs(y))
half <- n / 2
cat(sprintf("cells %d, largest relative difference: estimate %.1e, variance %.1e; cells above 1e-6: %d\n",
            half, max(d[1:half]), max(d[(half + 1):n]), sum(pmax(d[1:half], d[(half + 1):n]) > 1e-6)))
