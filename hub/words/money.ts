/** Money in the farm's currency (ISO 4217), written as the language does. */
export function moneyIn(locale: string) {
  const formats = new Map<string, Intl.NumberFormat>();
  const format = (currency: string, whole: boolean) => {
    const key = `${currency} ${whole}`;
    let made = formats.get(key);
    if (!made) {
      const rest = whole ? { maximumFractionDigits: 0 } : {};
      made = new Intl.NumberFormat(locale, { style: 'currency', currency, ...rest });
      formats.set(key, made);
    }
    return made;
  };
  return {
    /** Whole money. */
    money: (value: number, currency: string) => format(currency, true).format(value),
    /** With its cents: what a run costs is no round sum. */
    cents: (value: number, currency: string) => format(currency, false).format(value),
  };
}
