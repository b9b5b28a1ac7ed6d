// Completion is asked of a real bash; zsh, fish and man are asked when they are here.
import { execFileSync, spawnSync } from 'node:child_process';
import { describe, expect, it } from 'vitest';
import { warmstead } from './testing/spawn-cli.ts';

const has = (program: string): boolean => spawnSync(program, ['--version']).error === undefined;

async function completed(line: string): Promise<readonly string[]> {
  const { out } = await warmstead(['completion', 'bash']);
  const words = line.split(' ');
  const ask = `${out}
COMP_WORDS=(${words.map((word) => `'${word}'`).join(' ')}); COMP_CWORD=${words.length - 1}
_warmstead; printf '%s\\n' "\${COMPREPLY[@]}"`;
  return execFileSync('bash', ['-c', ask], { encoding: 'utf8' }).trim().split('\n');
}

describe('completion', () => {
  it('finishes commands, options, their words and files in bash', async () => {
    expect(await completed('warmstead pl')).toEqual(['plan']);
    expect(await completed('warmstead plan --spec')).toEqual(['--species']);
    expect(await completed('warmstead plan --species roy')).toEqual(['royal']);
    expect(await completed('warmstead plan --lang ')).toEqual(['en', 'de']);
    expect(await completed('warmstead check package.j')).toEqual(['package.json']);
    expect(await completed('warmstead completion --h')).toEqual(['--help']);
  });

  it('names every command and option in every shell', async () => {
    for (const shell of ['bash', 'zsh', 'fish']) {
      const { out, code } = await warmstead(['completion', shell]);
      expect(code).toBe(0);
      for (const word of ['plan', 'simulate', 'check', 'proof', 'manual', 'tariff', 'enclosure'])
        expect(out, shell).toContain(word);
      if (has(shell)) {
        const parsed = spawnSync(shell, ['-n'], { input: out, encoding: 'utf8' });
        expect(parsed.stderr, shell).toBe('');
      }
    }
  });

  it('refuses a shell it does not know, naming those it knows', async () => {
    const { code, err } = await warmstead(['completion', 'tcsh']);
    expect(code).toBe(64);
    expect(err).toContain('bash, zsh, fish');
  });
});

describe('manual', () => {
  it.each(['en', 'de'])('stands in %s with every command, no line that roff would take for a request', async (lang) => {
    const { out, code } = await warmstead(['manual', '--lang', lang]);
    expect(code).toBe(0);
    const requests = new Set(out.split('\n').flatMap((line) => /^[.'](\S*)/.exec(line)?.[1] ?? []));
    expect([...requests].sort()).toEqual(['B', 'PP', 'RE', 'RS', 'SH', 'SS', 'TH', 'TP', 'br', 'fi', 'nf']);
    for (const command of ['plan', 'simulate', 'check', 'proof', 'completion'])
      expect(out).toContain(`.B warmstead ${command}`);
    expect(out).toContain('NO_COLOR');
    if (!has('groff')) return;
    const shown = spawnSync('groff', ['-man', '-Tutf8', '-ww', '-k'], { input: out, encoding: 'utf8' });
    expect(shown.stderr).toBe('');
  });
});
