import type { FastifyCompressOptions } from '@fastify/compress';

/** Long JSON goes as gzip to whoever takes it: a sixth of the bytes for a phone far off. Pages come ready made. */
export const SQUEEZED: FastifyCompressOptions = {
  customTypes: /^application\/json\b/,
  encodings: ['gzip'], // the hub's board spends little on it; better ones cost it more than they spare
  threshold: 1500, // bytes; ours: what fits one packet gains nothing
  zlibOptions: { level: 4 }, // of 9; ours: most of the gain for a little of a core
  requestEncodings: ['identity'], // nothing that the hub is sent needs it
};
