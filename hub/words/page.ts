// The door for pages: languages by name and units, without any language's words. A page loads its own.

export * from './farmUnits.ts';
export * from './languages.ts';
export * from './units.ts';
