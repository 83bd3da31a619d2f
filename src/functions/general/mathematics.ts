/** Mathematics of the open standard: one line each, `NAME(arguments): what it gives`. */
export const mathematics = `
ABS(number): the number without its sign
ACOS(number): angle in radians whose cosine it is
ACOSH(number): inverse hyperbolic cosine
ACOT(number): angle in radians whose cotangent it is
ACOTH(number): inverse hyperbolic cotangent
ARABIC(text): number from a Roman numeral
ASIN(number): angle in radians whose sine it is
ASINH(number): inverse hyperbolic sine
ATAN(number): angle in radians whose tangent it is
ATAN2(x, y): angle in radians from the x axis to a point
ATANH(number): inverse hyperbolic tangent
BASE(number, radix, [length]): whole number as text in another base
BESSELI(x, order): modified Bessel function of the first kind
BESSELJ(x, order): Bessel function of the first kind
BESSELK(x, order): modified Bessel function of the second kind
BESSELY(x, order): Bessel function of the second kind
BIN2DEC(text): decimal number from binary
BIN2HEX(text, [digits]): hexadecimal text from binary
BIN2OCT(text, [digits]): octal text from binary
BITAND(a, b): whole number of the bits set in both
BITLSHIFT(number, bits): whole number with its bits moved left
BITOR(a, b): whole number of the bits set in either
BITRSHIFT(number, bits): whole number with its bits moved right
BITXOR(a, b): whole number of the bits set in one only
CEILING(number, step): rounded up to a multiple of step
CEILING.MATH(number, [step], [mode]): rounded up to a multiple, negative numbers by mode
CEILING.PRECISE(number, [step]): rounded up to a multiple, towards plus infinity
COMBIN(n, k): ways to choose k of n
COMBINA(n, k): ways to choose k of n with repeats
COMPLEX(real, imaginary, [letter]): complex number as text
COS(radians): cosine
COSH(number): hyperbolic cosine
COT(radians): cotangent
COTH(number): hyperbolic cotangent
CSC(radians): cosecant
CSCH(number): hyperbolic cosecant
DEC2BIN(number, [digits]): binary text of a number
DEC2HEX(number, [digits]): hexadecimal text of a number
DEC2OCT(number, [digits]): octal text of a number
DECIMAL(text, radix): number from text in another base
DEGREES(radians): angle in degrees
DELTA(a, [b]): 1 when both are equal, else 0
ERF(from, [to]): error function
ERFC(number): what the error function lacks to 1
EVEN(number): rounded away from 0 to an even number
EXP(number): e to that power
FACT(number): factorial
FACTDOUBLE(number): double factorial
FLOOR(number, step): rounded down to a multiple of step
FLOOR.MATH(number, [step], [mode]): rounded down to a multiple, negative numbers by mode
FLOOR.PRECISE(number, [step]): rounded down to a multiple, towards minus infinity
GAMMA(number): gamma function
GAMMALN(number): logarithm of the gamma function
GAMMALN.PRECISE(number): logarithm of the gamma function
GCD(numbers...): greatest common divisor
HEX2BIN(text, [digits]): binary text from hexadecimal
HEX2DEC(text): decimal number from hexadecimal
HEX2OCT(text, [digits]): octal text from hexadecimal
IMABS(complex): size of a complex number
IMAGINARY(complex): imaginary part
IMARGUMENT(complex): angle of a complex number in radians
IMCONJUGATE(complex): complex conjugate
IMCOS(complex): cosine of a complex number
IMCOSH(complex): hyperbolic cosine of a complex number
IMCOT(complex): cotangent of a complex number
IMCSC(complex): cosecant of a complex number
IMCSCH(complex): hyperbolic cosecant of a complex number
IMDIV(a, b): quotient of complex numbers
IMEXP(complex): e to a complex power
IMLN(complex): natural logarithm of a complex number
IMLOG10(complex): logarithm to base 10 of a complex number
IMLOG2(complex): logarithm to base 2 of a complex number
IMPOWER(complex, power): power of a complex number
IMPRODUCT(complex...): product of complex numbers
IMREAL(complex): real part
IMSEC(complex): secant of a complex number
IMSECH(complex): hyperbolic secant of a complex number
IMSIN(complex): sine of a complex number
IMSINH(complex): hyperbolic sine of a complex number
IMSQRT(complex): square root of a complex number
IMSUB(a, b): difference of complex numbers
IMSUM(complex...): sum of complex numbers
IMTAN(complex): tangent of a complex number
INT(number): rounded down to a whole number
ISO.CEILING(number, [step]): rounded up to a multiple, towards plus infinity
LCM(numbers...): least common multiple
LN(number): natural logarithm
LOG(number, [base=10]): logarithm
LOG10(number): logarithm to base 10
MMULT(a, b): product of two matrices
MOD(number, divisor): what is left over, with the sign of the divisor
MROUND(number, step): rounded to the nearest multiple
MULTINOMIAL(numbers...): multinomial coefficient
OCT2BIN(text, [digits]): binary text from octal
OCT2DEC(text): decimal number from octal
OCT2HEX(text, [digits]): hexadecimal text from octal
ODD(number): rounded away from 0 to an odd number
PI(): 3.14159265358979
POWER(base, exponent): base to that power
PRODUCT(numbers...): product
QUOTIENT(number, divisor): whole part of a quotient
RADIANS(degrees): angle in radians
RAND(): random number from 0 to 1
RANDBETWEEN(from, to): random whole number
ROMAN(number, [form]): Roman numeral
ROUND(number, [places=0]): rounded, halves away from 0
ROUNDDOWN(number, [places=0]): rounded towards 0
ROUNDUP(number, [places=0]): rounded away from 0
SEC(radians): secant
SECH(number): hyperbolic secant
SERIESSUM(x, first, step, coefficients): sum of a power series
SIGN(number): 1, 0 or -1
SIN(radians): sine
SINH(number): hyperbolic sine
SQRT(number): square root
SQRTPI(number): square root of number times pi
SUBTOTAL(what, range): sum, count and the like by number
SUM(numbers...): sum
SUMIF(range, condition, [sum_range]): sum of the cells that meet a condition
SUMIFS(sum_range, range, condition, ...): sum of the cells that meet all conditions
SUMPRODUCT(ranges...): sum of the products of like cells
SUMSQ(numbers...): sum of squares
SUMX2MY2(x, y): sum of x squared less y squared
SUMX2PY2(x, y): sum of x squared and y squared
SUMXMY2(x, y): sum of squared differences
TAN(radians): tangent
TANH(number): hyperbolic tangent
TRUNC(number, [places=0]): cut off towards 0
`;
