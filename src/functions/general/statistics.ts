/** Statistics and databases of the open standard: one line each, `NAME(arguments): what it gives`. */
export const statistics = `
AVEDEV(numbers...): mean distance from the mean
AVERAGE(numbers...): mean
AVERAGEA(values...): mean, text counting as 0
AVERAGEIF(range, condition, [average_range]): mean of the cells that meet a condition
BETA.DIST(x, alpha, beta, cumulative, [from], [to]): beta distribution
BETA.INV(probability, alpha, beta, [from], [to]): inverse of the beta distribution
BETADIST(x, alpha, beta, [from], [to]): beta distribution
BETAINV(probability, alpha, beta, [from], [to]): inverse of the beta distribution
BINOM.DIST(successes, trials, probability, cumulative): binomial distribution
BINOM.INV(trials, probability, alpha): least successes of a binomial distribution
BINOMDIST(successes, trials, probability, cumulative): binomial distribution
CHIDIST(x, degrees): right tail of the chi-square distribution
CHIDISTRT(x, degrees): right tail of the chi-square distribution
CHIINV(probability, degrees): inverse of the right tail of chi-square
CHIINVRT(probability, degrees): inverse of the right tail of chi-square
CHISQ.DIST(x, degrees, cumulative): chi-square distribution
CHISQ.DIST.RT(x, degrees): right tail of the chi-square distribution
CHISQ.INV(probability, degrees): inverse of the chi-square distribution
CHISQ.INV.RT(probability, degrees): inverse of the right tail of chi-square
CHISQ.TEST(observed, expected): chi-square test
CHITEST(observed, expected): chi-square test
CONFIDENCE(alpha, deviation, size): half width of a normal confidence interval
CONFIDENCE.NORM(alpha, deviation, size): half width of a normal confidence interval
CONFIDENCE.T(alpha, deviation, size): half width of a Student confidence interval
CORREL(x, y): coefficient of correlation
COUNT(values...): how many are numbers
COUNTA(values...): how many are not empty
COUNTBLANK(range): how many cells are empty
COUNTIF(range, condition): how many meet a condition
COUNTIFS(range, condition, ...): how many meet all conditions
COUNTUNIQUE(values...): how many different values
COVAR(x, y): covariance of the population
COVARIANCE.P(x, y): covariance of the population
COVARIANCE.S(x, y): covariance of a sample
COVARIANCEP(x, y): covariance of the population
COVARIANCES(x, y): covariance of a sample
CRITBINOM(trials, probability, alpha): least successes of a binomial distribution
DAVERAGE(database, field, criteria): mean of a field in the records that fit
DCOUNT(database, field, criteria): numbers of a field in the records that fit
DCOUNTA(database, field, criteria): filled cells of a field in the records that fit
DEVSQ(numbers...): sum of squared distances from the mean
DGET(database, field, criteria): field of the one record that fits
DMAX(database, field, criteria): largest of a field in the records that fit
DMIN(database, field, criteria): smallest of a field in the records that fit
DPRODUCT(database, field, criteria): product of a field in the records that fit
DSTDEV(database, field, criteria): deviation of a field, as of a sample
DSTDEVP(database, field, criteria): deviation of a field, as of a population
DSUM(database, field, criteria): sum of a field in the records that fit
DVAR(database, field, criteria): variance of a field, as of a sample
DVARP(database, field, criteria): variance of a field, as of a population
EXPON.DIST(x, rate, cumulative): exponential distribution
EXPONDIST(x, rate, cumulative): exponential distribution
F.DIST(x, degrees_1, degrees_2, cumulative): F distribution
F.DIST.RT(x, degrees_1, degrees_2): right tail of the F distribution
F.INV(probability, degrees_1, degrees_2): inverse of the F distribution
F.INV.RT(probability, degrees_1, degrees_2): inverse of the right tail of F
F.TEST(x, y): F test of two variances
FDIST(x, degrees_1, degrees_2): right tail of the F distribution
FDISTRT(x, degrees_1, degrees_2): right tail of the F distribution
FINV(probability, degrees_1, degrees_2): inverse of the right tail of F
FINVRT(probability, degrees_1, degrees_2): inverse of the right tail of F
FISHER(r): Fisher transformation
FISHERINV(z): inverse of the Fisher transformation
FTEST(x, y): F test of two variances
GAMMA.DIST(x, alpha, beta, cumulative): gamma distribution
GAMMA.INV(probability, alpha, beta): inverse of the gamma distribution
GAMMADIST(x, alpha, beta, cumulative): gamma distribution
GAMMAINV(probability, alpha, beta): inverse of the gamma distribution
GAUSS(z): standard normal distribution less one half
GEOMEAN(numbers...): geometric mean
HARMEAN(numbers...): harmonic mean
HYPGEOM.DIST(successes, sample, marked, population, cumulative): hypergeometric distribution
HYPGEOMDIST(successes, sample, marked, population, cumulative): hypergeometric distribution
LARGE(range, rank): the rank-th largest
LOGINV(probability, mean, deviation): inverse of the log-normal distribution
LOGNORM.DIST(x, mean, deviation, cumulative): log-normal distribution
LOGNORM.INV(probability, mean, deviation): inverse of the log-normal distribution
LOGNORMDIST(x, mean, deviation, cumulative): log-normal distribution
LOGNORMINV(probability, mean, deviation): inverse of the log-normal distribution
MAX(numbers...): largest
MAXA(values...): largest, text counting as 0
MAXIFS(range, condition_range, condition, ...): largest of those that meet all conditions
MEDIAN(numbers...): the one in the middle
MIN(numbers...): smallest
MINA(values...): smallest, text counting as 0
MINIFS(range, condition_range, condition, ...): smallest of those that meet all conditions
NEGBINOM.DIST(failures, successes, probability, cumulative): negative binomial distribution
NEGBINOMDIST(failures, successes, probability, cumulative): negative binomial distribution
NORM.DIST(x, mean, deviation, cumulative): normal distribution
NORM.INV(probability, mean, deviation): inverse of the normal distribution
NORM.S.DIST(z, cumulative): standard normal distribution
NORM.S.INV(probability): inverse of the standard normal distribution
NORMDIST(x, mean, deviation, cumulative): normal distribution
NORMINV(probability, mean, deviation): inverse of the normal distribution
NORMSDIST(z, cumulative): standard normal distribution
NORMSINV(probability): inverse of the standard normal distribution
PEARSON(x, y): coefficient of correlation
PERCENTILE(range, share): value under which a share lies
PERCENTILE.EXC(range, share): value under which a share lies, ends left out
PERCENTILE.INC(range, share): value under which a share lies
PHI(z): density of the standard normal distribution
POISSON(x, mean, cumulative): Poisson distribution
POISSON.DIST(x, mean, cumulative): Poisson distribution
POISSONDIST(x, mean, cumulative): Poisson distribution
QUARTILE(range, quarter): value under which a quarter lies
QUARTILE.EXC(range, quarter): value under which a quarter lies, ends left out
QUARTILE.INC(range, quarter): value under which a quarter lies
RSQ(y, x): square of the correlation
SKEW(numbers...): skewness of a sample
SKEW.P(numbers...): skewness of a population
SKEWP(numbers...): skewness of a population
SLOPE(y, x): slope of the line of best fit
SMALL(range, rank): the rank-th smallest
STANDARDIZE(x, mean, deviation): distance from the mean in deviations
STDEV(numbers...): deviation of a sample
STDEV.P(numbers...): deviation of a population
STDEV.S(numbers...): deviation of a sample
STDEVA(values...): deviation of a sample, text counting as 0
STDEVP(numbers...): deviation of a population
STDEVPA(values...): deviation of a population, text counting as 0
STDEVS(numbers...): deviation of a sample
STEYX(y, x): error of the line of best fit
T.DIST(x, degrees, cumulative): Student distribution
T.DIST.2T(x, degrees): both tails of the Student distribution
T.DIST.RT(x, degrees): right tail of the Student distribution
T.INV(probability, degrees): inverse of the Student distribution
T.INV.2T(probability, degrees): inverse of both tails of Student
T.TEST(x, y, tails, type): Student test of two means
TDIST(x, degrees, tails): tails of the Student distribution
TDIST2T(x, degrees): both tails of the Student distribution
TDISTRT(x, degrees): right tail of the Student distribution
TINV(probability, degrees): inverse of both tails of Student
TINV2T(probability, degrees): inverse of both tails of Student
TTEST(x, y, tails, type): Student test of two means
VAR(numbers...): variance of a sample
VAR.P(numbers...): variance of a population
VAR.S(numbers...): variance of a sample
VARA(values...): variance of a sample, text counting as 0
VARP(numbers...): variance of a population
VARPA(values...): variance of a population, text counting as 0
VARS(numbers...): variance of a sample
WEIBULL(x, shape, scale, cumulative): Weibull distribution
WEIBULL.DIST(x, shape, scale, cumulative): Weibull distribution
WEIBULLDIST(x, shape, scale, cumulative): Weibull distribution
Z.TEST(range, mean, [deviation]): right tail of a normal test of the mean
ZTEST(range, mean, [deviation]): right tail of a normal test of the mean
`;
