/** Fields of a farm's description that are kept in °C, in kg, or as money or minutes a kg, by part. */
export const farmUnits: Readonly<
  Record<string, Readonly<Record<string, '°C' | 'K' | 'kg' | '/kg'>>>
> = {
  place: { 'cover.damage': '°C', setPoint: '°C', limit: '°C' },
  crop: {
    ...{ base: '°C', band: '°C', heatLimit: '°C', chill: '°C' },
    ...{ 'keeps.at': '°C', 'keeps.freezes': '°C', 'keeps.chill': '°C' },
    ...{ perTray: 'kg', 'young.perTray': 'kg' },
    ...{ price: '/kg', 'young.price': '/kg', 'minutes.pack': '/kg' },
  },
  mix: { price: '/kg' },
  probe: { 'offset.temperature': 'K', 'offset.soil-temperature': 'K' },
};
