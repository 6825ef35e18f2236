export { kindOf, mediaTypes, PHOTO_NAME, type PhotoKind } from './photoKind.ts';
export { MOST_PHOTO, PhotoRefused, type Photos, photosIn } from './photosIn.ts';
