/** Which number of one's own stands on which line of the sheet. */
export const solarTellers: Readonly<Record<string, string>> = {
  'outside-less-inside': 'gap',
  'sun-hours': 'sunHours',
  'system-factor': 'systemFactor',
  'days-without-sun': 'days',
  'depth-of-discharge': 'depth',
  'battery-efficiency': 'efficiency',
};
