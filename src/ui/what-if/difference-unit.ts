/** The unit in which a difference is shown: of temperatures it is the kelvin, for their scales have their zeros elsewhere. */
export const differenceUnit = (unit: string): string => (unit === 'degC' || unit === 'degF' ? 'K' : unit);
