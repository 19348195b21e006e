// Sets of fonts that a machine may have, each as a configuration of fontconfig that knows no other.
//
// Two families that nearly every Linux has one of, with what a system says of families; and one font
// alone: all that is asked for is then set in letters of one width, the widest there are. What fits
// with them fits with any.
import { copyFileSync, existsSync, mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";

const installed = "/usr/share/fonts/truetype";

/** Sets whose fonts are installed: name, configuration, and the paper to print on. */
export function fontSets(work) {
  const alone = join(work, "alone");
  mkdirSync(alone, { recursive: true });
  const mono = join(installed, "dejavu/DejaVuSansMono.ttf");
  if (existsSync(mono)) copyFileSync(mono, join(alone, "DejaVuSansMono.ttf"));
  return [
    { name: "Liberation", folder: join(installed, "liberation"), paper: "A4" },
    { name: "DejaVu", folder: join(installed, "dejavu"), paper: "A4" },
    { name: "one font alone", folder: alone, paper: "Letter", needs: mono },
  ].filter((set) => existsSync(set.needs ?? set.folder)).map((set, at) => {
    const config = join(work, `set-${at}.conf`);
    writeFileSync(config, `<?xml version="1.0"?>
<!DOCTYPE fontconfig SYSTEM "urn:fontconfig:fonts.dtd">
<fontconfig>
  <dir>${set.folder}</dir>
  <include ignore_missing="yes">/etc/fonts/conf.d</include>
  <cachedir>${join(work, `cache-${at}`)}</cachedir>
</fontconfig>
`);
    return { ...set, config };
  });
}
