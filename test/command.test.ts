/** Checks that the README's two commands are the ones that exist, and that the unattended run uses the same. */
import { spawnSync } from 'node:child_process'
import { describe, expect, test } from 'vitest'
import { repositoryRoot, textOf } from './repository.ts'

const commands = [...textOf('README.md').matchAll(/```sh\n([\s\S]*?)```/g)].map((match) => match[1]!.trim())
const scripts = (JSON.parse(textOf('package.json')) as { scripts: Record<string, string> }).scripts

describe('law: the commands in prose are the commands that exist', () => {
  test('the README gives exactly two', () => {
    expect(commands).toEqual(['npm ci && npm start', 'npm ci && npm test'])
  })
  test('npm knows every script that a page names', () => {
    const text = ['README.md', 'CONTRIBUTING.md', 'docs/decisions.md', 'docs/conventions.md']
      .map(textOf)
      .join('\n')
    const named = [...text.matchAll(/\bnpm (?:run ([a-z]+)|(start|test))\b/g)].map((m) => m[1] ?? m[2]!)
    expect(named.length).toBeGreaterThan(2)
    expect(named.filter((name) => scripts[name] === undefined)).toEqual([])
  })
  test('the unattended run runs the test command, and its shell text is sound', () => {
    expect(textOf('.ci/run')).toContain(`{ ${commands[1]}; }`)
    expect(textOf('.ci/run')).toContain('set -euo pipefail')
    const { status, stderr } = spawnSync('bash', ['-n', '.ci/run'], { cwd: repositoryRoot, encoding: 'utf8' })
    expect(stderr).toBe('')
    expect(status).toBe(0)
  })
  test('the licence is the one the package names', () => {
    expect(textOf('LICENSE').startsWith('MIT License')).toBe(true)
    expect(JSON.parse(textOf('package.json')).license).toBe('MIT')
  })
})
