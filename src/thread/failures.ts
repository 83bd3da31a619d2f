/**
 * The three ways in which a computation refuses its input.
 *
 * A plain RangeError says that a number is outside its domain: it names the argument, the bound and the value
 * given, in lower case without a full stop. The two kinds below are RangeErrors too, so that whoever calls the
 * functions without a sheet needs one catch only; a sheet shows them as #VALUE! and #N/A.
 */

/** Text that cannot be read, or a required argument left out. */
export class Unreadable extends RangeError {
  override readonly name = "Unreadable";
}

/** A look-up that finds nothing. */
export class NothingFound extends RangeError {
  override readonly name = "NothingFound";
}
