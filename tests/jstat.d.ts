/** The parts of jstat that the tests use as a second opinion on statistics. */
declare module 'jstat' {
  interface Distribution {
    pdf(x: number, ...parameters: number[]): number;
    cdf(x: number, ...parameters: number[]): number;
    inv(p: number, ...parameters: number[]): number;
  }
  const jStat: Readonly<
    Record<
      | 'normal'
      | 'studentt'
      | 'chisquare'
      | 'centralF'
      | 'gamma'
      | 'lognormal'
      | 'weibull'
      | 'beta'
      | 'binomial'
      | 'poisson',
      Distribution
    >
  >;
  export default jStat;
}
