import { loadPyodide } from "./stock/pyodide.mjs";

self.onmessage = async ({ data }) => {
  const names = await (await fetch("./stock/wheels.json")).json();
  const wheels = Promise.all(names.map(async (name) => (await fetch(`./stock/${name}`)).arrayBuffer()));
  const python = await loadPyodide({ indexURL: new URL("./stock/", import.meta.url).href });
  for (const wheel of await wheels) python.unpackArchive(wheel, "wheel");
  postMessage(python.pyimport("calc.bridge").run(data));
};
