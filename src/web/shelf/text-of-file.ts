// The text of a table that was chosen: spreadsheets save in the letters of their country or in two bytes a letter too.
import { encodingOf } from '../../proving/files/text-encoding.ts';

export async function textOfFile(file: Blob): Promise<string> {
  const bytes = new Uint8Array(await file.arrayBuffer());
  return new TextDecoder(encodingOf(bytes)).decode(bytes);
}
