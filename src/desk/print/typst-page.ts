// Turns a page template and its data into a PDF for a screen reader and a black-and-white printer (PDF/UA-1).
// Texts reach the template as data and never as part of it. Leaves out what stands on a page (*.typ beside this file).
import { join } from 'node:path';
import { NodeCompiler } from '@myriaddreamin/typst-ts-node-compiler';
import { programRoot } from '../../records/root.ts';

let compiler: NodeCompiler | undefined;

function typesetter(): NodeCompiler {
  const fonts = join(programRoot(), 'node_modules', '@expo-google-fonts', 'source-sans-3');
  const folders = ['400Regular', '400Regular_Italic', '600SemiBold'].map((folder) => join(fonts, folder));
  compiler ??= NodeCompiler.create({
    workspace: join(programRoot(), 'src', 'desk', 'print'),
    fontArgs: [{ fontPaths: folders }],
  });
  return compiler;
}

/** A page template filled with its data, set but not yet written. */
export interface SetPages {
  readonly count: number;
  /** @param at printed as the date of the file */
  readonly pdf: (at: Date) => Buffer;
}

/** @param template file beside this one, e.g. "inspection.typ" */
export function setPages(template: string, data: object): SetPages {
  const mainFilePath = join(programRoot(), 'src', 'desk', 'print', template);
  const made = typesetter();
  const compiled = made.compile({ mainFilePath, inputs: { data: JSON.stringify(data) } });
  const document = compiled.result;
  made.evictCache(10);
  if (document === null) throw new Error(`${template}: ${JSON.stringify(compiled.takeError()?.shortDiagnostics)}`);
  return {
    count: document.numOfPages,
    pdf: (at) => made.pdf(document, { pdfStandard: 'ua-1', creationTimestamp: Math.floor(at.getTime() / 1000) }),
  };
}

export const printedPage = (template: string, data: object, at: Date): Buffer => setPages(template, data).pdf(at);
