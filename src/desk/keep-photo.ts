// Keep a photograph of an animal, and give it back. What it is told to be is not believed: the first bytes decide.
import { insertPhoto, photoById } from '../records/animal-photos.ts';
import { bad, good, type Result } from '../shared/result.ts';
import { animalFaults } from './animal-faults.ts';
import { recordOf, surroundings } from './animal-record.ts';
import type { DeskContext } from './desk-context.ts';
import { writeEntry, writerOf } from './write-entry.ts';

/** A photograph of 1 600 picture elements is under this (our choice). */
export const largestPhotoBytes = 400_000;

/** Type by the first bytes, null when it is none of the three. */
export function pictureType(bytes: Uint8Array): 'image/jpeg' | 'image/png' | 'image/webp' | null {
  const starts = (...wanted: readonly number[]): boolean => wanted.every((byte, i) => bytes[i] === byte);
  if (starts(0xff, 0xd8, 0xff)) return 'image/jpeg';
  if (starts(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a)) return 'image/png';
  const text = (from: number, to: number): string => String.fromCharCode(...bytes.subarray(from, to));
  return text(0, 4) === 'RIFF' && text(8, 12) === 'WEBP' ? 'image/webp' : null;
}

/** Faults: "ANIMAL_UNKNOWN", "ANIMAL_PHOTO". */
export async function keepPhoto(
  desk: DeskContext,
  id: string,
  base64: string,
  of: string,
): Promise<Result<{ readonly photoId: string }>> {
  const bytes = Buffer.from(base64, 'base64');
  const mediaType = pictureType(bytes);
  if (bytes.length > largestPhotoBytes) return bad([animalFaults.photo(`${bytes.length} bytes`)]);
  if (mediaType === null) return bad([animalFaults.photo('bytes of no known picture')]);
  const around = await surroundings(desk);
  const found = await recordOf(desk, around, id);
  if (!found.ok) return found;
  const photoId = await insertPhoto(desk.db, id, { mediaType, bytes }, writerOf(desk));
  const written = await writeEntry(desk, { animalId: id, kind: 'photo', body: { photoId, of } });
  return written.ok ? good({ photoId }) : written;
}

/** Faults: "ANIMAL_UNKNOWN". */
export async function readPhoto(desk: DeskContext, id: string, photoId: string) {
  const around = await surroundings(desk);
  const found = await recordOf(desk, around, id);
  if (!found.ok) return found;
  const photo = await photoById(desk.db, id, photoId);
  return photo === undefined ? bad([animalFaults.unknown(photoId)]) : good(photo);
}
