/** Kinds of pictures that are kept. */
export type PhotoKind = 'jpg' | 'png' | 'webp';

export const mediaTypes: Readonly<Record<PhotoKind, string>> = {
  jpg: 'image/jpeg',
  png: 'image/png',
  webp: 'image/webp',
};

/** How a kept photo is called: the SHA-256 of its bytes, and its kind. */
export const PHOTO_NAME = /^[0-9a-f]{64}\.(jpg|png|webp)$/;

const begins = (bytes: Uint8Array, at: number, wanted: readonly number[]) =>
  wanted.every((byte, i) => bytes[at + i] === byte);

/**
 * What a picture is by its first bytes, whatever it was called; null for anything else.
 *
 * Source: JPEG start of image and a marker, ITU-T T.81 B.1.1; PNG signature, ISO/IEC 15948 5.2;
 * WebP container, RFC 9649 2.4.
 */
export function kindOf(bytes: Uint8Array): PhotoKind | null {
  if (begins(bytes, 0, [0xff, 0xd8, 0xff])) return 'jpg';
  if (begins(bytes, 0, [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a])) return 'png';
  const riff = begins(bytes, 0, [0x52, 0x49, 0x46, 0x46]); // RIFF
  if (riff && begins(bytes, 8, [0x57, 0x45, 0x42, 0x50])) return 'webp'; // WEBP
  return null;
}
