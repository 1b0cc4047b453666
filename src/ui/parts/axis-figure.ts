/** Figures along an axis: as many decimals as the step needs, a true minus, the decimal sign of the language. */

const formats = new Map<string, Intl.NumberFormat>();

/**
 * @param value  place on the axis
 * @param step   distance from figure to figure, > 0, in the unit of `value`
 * @example axisFigure(-20, 20, 'en') gives '−20'; axisFigure(0.5, 0.5, 'de') gives '0,5'
 */
export const axisFigure = (value: number, step: number, locale: string): string => {
  const decimals = Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
  const key = `${locale} ${decimals}`;
  const format = formats.get(key) ?? new Intl.NumberFormat(locale, { minimumFractionDigits: decimals, maximumFractionDigits: decimals });
  formats.set(key, format);
  return format.format(value === 0 ? 0 : value).replace('-', '−');
};
