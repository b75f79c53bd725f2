import { build } from "esbuild";
import { projectPath } from "../../tools/shipped.js";

/** The script of the report's page, bundled with everything it needs. */
export async function bundledScript(): Promise<string> {
  const { outputFiles } = await build({
    absWorkingDir: projectPath(""),
    entryPoints: ["src/outputs/report/page/main.tsx"],
    tsconfig: "src/outputs/report/page/tsconfig.json",
    bundle: true,
    minify: true,
    format: "iife",
    target: "es2023",
    jsx: "automatic",
    jsxImportSource: "preact",
    charset: "utf8",
    legalComments: "none",
    write: false,
  });
  return outputFiles.map(({ text }) => text.trimEnd()).join("\n");
}

/** The module that holds the script. */
export function scriptModule(script: string): string {
  return `/** Made from the folder \`page\` by a test, which says when it is out of date; not to be edited. */\nexport const PAGE_SCRIPT = ${JSON.stringify(script)};\n`;
}
