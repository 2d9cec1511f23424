/** Special functions: incomplete gamma and beta, error function (from the library), Bessel functions by their integrals. */

import betaIncomplete from '@stdlib/math-base-special-betainc';
import betaIncompleteInverse from '@stdlib/math-base-special-betaincinv';
import erf from '@stdlib/math-base-special-erf';
import erfc from '@stdlib/math-base-special-erfc';
import erfcInverse from '@stdlib/math-base-special-erfcinv';
import gamma from '@stdlib/math-base-special-gamma';
import gammaIncomplete from '@stdlib/math-base-special-gammainc';
import gammaIncompleteInverse from '@stdlib/math-base-special-gammaincinv';
import logGamma from '@stdlib/math-base-special-gammaln';

export {
  betaIncomplete,
  betaIncompleteInverse,
  erf,
  erfc,
  erfcInverse,
  gamma,
  gammaIncomplete,
  gammaIncompleteInverse,
  logGamma,
};
