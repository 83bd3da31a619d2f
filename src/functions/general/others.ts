/** Logic, look-up, text, dates and money of the open standard: one line each, `NAME(arguments): what it gives`. */
export const others = `
ADDRESS(row, column, [kind], [style], [sheet]): address of a cell as text
AND(conditions...): TRUE when all are
ARRAYFORMULA(formula): the formula reckoned over whole ranges
ARRAY_CONSTRAIN(array, rows, columns): the first rows and columns of an array
CHAR(code): letter of a code
CHOOSE(index, values...): the index-th value
CLEAN(text): text without signs that do not print
CODE(text): code of the first letter
COLUMN([reference]): number of a column
COLUMNS(range): how many columns
CONCATENATE(texts...): texts joined
CUMIPMT(rate, periods, value, first, last, type): interest of several payments
CUMPRINC(rate, periods, value, first, last, type): repaid by several payments
DATE(year, month, day): date as a number
DATEDIF(from, to, unit): days, months or years between dates
DATEVALUE(text): date from text
DAY(date): day of the month
DAYS(to, from): days between dates
DAYS360(from, to, [european]): days between dates in a year of 360
DB(cost, salvage, life, period, [month]): depreciation, declining balance
DDB(cost, salvage, life, period, [factor]): depreciation, double declining balance
DOLLARDE(number, fraction): decimal from a figure in fractions
DOLLARFR(number, fraction): figure in fractions from a decimal
EDATE(date, months): date some months later
EFFECT(rate, periods): effective yearly rate
EOMONTH(date, months): last day of a month some months later
EXACT(a, b): TRUE when texts are the same, letter case counting
FALSE(): FALSE
FILTER(range, conditions...): rows or columns where the conditions hold
FIND(sought, text, [start]): place of text, letter case counting
FORMULATEXT(reference): the formula of a cell as text
FV(rate, periods, payment, [value], [type]): future value
FVSCHEDULE(value, rates): future value at changing rates
HLOOKUP(sought, range, row, [sorted]): look-up in the first row
HOUR(time): hour
HSTACK(ranges...): ranges side by side
HYPERLINK(address, [text]): address shown as text
IF(condition, then, [else]): one of two values
IFERROR(value, instead): the value, or another where it is an error
IFNA(value, instead): the value, or another where nothing was found
IFS(condition, value, ...): value of the first condition that holds
INDEX(range, row, [column]): a cell of a range
INTERVAL(seconds): a span of time as text
IPMT(rate, period, periods, value, [future], [type]): interest of one payment
IRR(values, [guess]): internal rate of return
ISBINARY(text): TRUE for a binary number
ISBLANK(value): TRUE for an empty cell
ISERR(value): TRUE for an error other than #N/A
ISERROR(value): TRUE for an error
ISEVEN(number): TRUE for an even number
ISFORMULA(reference): TRUE for a cell with a formula
ISLOGICAL(value): TRUE for TRUE and FALSE
ISNA(value): TRUE for #N/A
ISNONTEXT(value): TRUE for all but text
ISNUMBER(value): TRUE for a number
ISODD(number): TRUE for an odd number
ISOWEEKNUM(date): number of the week after ISO 8601
ISPMT(rate, period, periods, value): interest of one payment, repaid evenly
ISREF(value): TRUE for a reference
ISTEXT(value): TRUE for text
LEFT(text, [letters=1]): its first letters
LEN(text): how many letters
LOWER(text): in small letters
MATCH(sought, range, [type]): place of a value in a range
MAXPOOL(range, size, [stride]): largest of each stretch
MEDIANPOOL(range, size, [stride]): middle of each stretch
MID(text, start, letters): letters from the middle
MINUTE(time): minute
MIRR(values, rate, reinvest): modified internal rate of return
MONTH(date): month
N(value): value as a number
NA(): #N/A, nothing found
NETWORKDAYS(from, to, [holidays]): working days between dates
NETWORKDAYS.INTL(from, to, [weekend], [holidays]): working days between dates, weekend stated
NOMINAL(rate, periods): nominal yearly rate
NOT(condition): the opposite
NOW(): date and time now
NPER(rate, payment, value, [future], [type]): number of payments
NPV(rate, values...): net present value
OFFSET(reference, rows, columns, [height], [width]): a range moved from another
OR(conditions...): TRUE when any is
PDURATION(rate, value, future): periods to reach a value
PMT(rate, periods, value, [future], [type]): payment
PPMT(rate, period, periods, value, [future], [type]): repaid by one payment
PROPER(text): each word with a capital
PV(rate, periods, payment, [future], [type]): present value
RATE(periods, payment, value, [future], [type], [guess]): rate of interest
REPLACE(text, start, letters, new): letters replaced by place
REPT(text, times): text repeated
RIGHT(text, [letters=1]): its last letters
ROW([reference]): number of a row
ROWS(range): how many rows
RRI(periods, value, future): rate of growth
SEARCH(sought, text, [start]): place of text, letter case not counting
SECOND(time): second
SEQUENCE(rows, [columns], [start], [step]): block of counted numbers
SHEET([reference]): number of a sheet
SHEETS([reference]): how many sheets
SLN(cost, salvage, life): depreciation, straight line
SORT(range, [column], [order]): rows in order
SPLIT(text, index): a word of a text
SUBSTITUTE(text, old, new, [which]): text replaced by what it says
SWITCH(value, case, result, ..., [else]): result of the case that is equal
SYD(cost, salvage, life, period): depreciation, sum of years
T(value): value as text, else nothing
TBILLEQ(settlement, maturity, discount): yield of a bill as of a bond
TBILLPRICE(settlement, maturity, discount): price of a bill
TBILLYIELD(settlement, maturity, price): yield of a bill
TEXT(number, mask): number as text, as 0.00 or # ?/64
TEXTJOIN(between, skip_empty, texts...): texts joined with something between
TIME(hour, minute, second): time as a part of a day
TIMEVALUE(text): time from text
TODAY(): date today
TRANSPOSE(range): rows as columns
TRIM(text): without spaces at the ends and double ones within
TRUE(): TRUE
UNICHAR(code): letter of a Unicode code
UNICODE(text): Unicode code of the first letter
UNIQUE(range, [by_column], [once]): each value once
UPPER(text): in capitals
VALUE(text): number from text
VERSION(): version of the engine
VLOOKUP(sought, range, column, [sorted]): look-up in the first column
VSTACK(ranges...): ranges one under another
WEEKDAY(date, [type]): day of the week
WEEKNUM(date, [type]): number of the week
WORKDAY(date, days, [holidays]): date some working days later
WORKDAY.INTL(date, days, [weekend], [holidays]): date some working days later, weekend stated
XIRR(values, dates, [guess]): internal rate of return by dates
XLOOKUP(sought, range, results, [else], [mode], [direction]): look-up in any range
XNPV(rate, values, dates): net present value by dates
XOR(conditions...): TRUE when an odd number of them is
YEAR(date): year
YEARFRAC(from, to, [basis]): share of a year between dates
`;
