// Another program of the standard that locked files follow: locks or opens standard input with a passphrase.
// Called as: node age.mjs MODULE lock|open PASSPHRASE
import { pathToFileURL } from "node:url";
import { readFileSync, writeFileSync } from "node:fs";

const [module, act, passphrase] = process.argv.slice(2);
const { Decrypter, Encrypter } = await import(pathToFileURL(module).href);
const input = readFileSync(0);
if (act === "lock") {
  const encrypter = new Encrypter();
  encrypter.setPassphrase(passphrase);
  writeFileSync(1, await encrypter.encrypt(input));
} else {
  const decrypter = new Decrypter();
  decrypter.addPassphrase(passphrase);
  writeFileSync(1, await decrypter.decrypt(input, "uint8array"));
}
