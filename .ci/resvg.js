// resvg.js FOLDER OUT FILE.svg…: draws each file with resvg at 300 dots to the
// inch, to a PNG of the same name in OUT.
import { mkdirSync, readFileSync, writeFileSync } from "node:fs"
import { dirname, join, relative } from "node:path"
import { Resvg } from "@resvg/resvg-js"

const [root, out, ...files] = process.argv.slice(2)
for (const file of files) {
  const drawing = new Resvg(readFileSync(file, "utf8"), {
    background: "white",
    fitTo: { mode: "zoom", value: 300 / 96 },
    font: { loadSystemFonts: false },
  })
  const png = join(out, relative(root, file).replace(/\.svg$/, ".png"))
  mkdirSync(dirname(png), { recursive: true })
  writeFileSync(png, drawing.render().asPng())
}
