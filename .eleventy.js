/**
 * For people who run Eleventy by hand: `npx @11ty/eleventy` builds every packet of `content/` into `_site/`.
 *
 * The program itself doesn't read this file. Ages are counted to a date, and there is no clock in here, so say
 * which: `SILLPLATE_AS_OF=2026-11-20 npx @11ty/eleventy`. `SILLPLATE_CONTENT` names another folder of houses.
 */
const COMPILE_FIRST = 'dist/ is missing: run npm run compile first';

async function compiled(file) {
  try {
    return await import(new URL(`dist/${file}`, import.meta.url));
  } catch (error) {
    if (error.code === 'ERR_MODULE_NOT_FOUND') throw new Error(COMPILE_FIRST, { cause: error });
    throw error;
  }
}

export default async function eleventy(configuration) {
  const asOf = process.env.SILLPLATE_AS_OF;
  if (asOf === undefined)
    throw new Error('say which date ages are counted to: SILLPLATE_AS_OF=year-month-day');
  const { configureSite } = await compiled('web/configure-site.js');
  const { packetsForEleventy } = await compiled('build.js');
  configureSite(
    configuration,
    await packetsForEleventy({ content: process.env.SILLPLATE_CONTENT ?? 'content', asOf }),
  );
}

export const config = { dir: { input: 'templates', output: '_site' } };
