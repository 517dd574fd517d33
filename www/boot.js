// Starts the module on the page. The build rewrites each "./name" to the name of its content.

// The module finds these addresses here, since only the build knows them.
const { dataset } = document.documentElement;
dataset.worker = new URL("./worker.js", import.meta.url).href;
dataset.sets = new URL("./sets.json", import.meta.url).href;
dataset.prose = new URL("./prose.txt", import.meta.url).href;

try {
  const { laid } = await import("./strands.js");
  const module = laid(fetch(new URL("./app_bg.wasm", import.meta.url)));
  const { default: start } = await import("./app.js");
  const { share } = await import("./shared.js");
  share(await start({ module_or_path: module }));
} catch (error) {
  const sentence = document.createElement("p");
  sentence.setAttribute("role", "alert");
  sentence.textContent =
    `Wallwise could not start: ${error}. ` +
    "Reload the page; if that does not help, use a browser of the last three years.";
  document.getElementById("room").replaceChildren(sentence);
  throw error;
} finally {
  // The room is kept on this device once it stands and rests, so that no first visit waits for that;
  // and if it could not start, a newer version may. Without locks there are no workers either: where a
  // browser or a host forbids them the room goes on without, as does an entry that says no version.
  if (navigator.locks && dataset.version) {
    const keep = () => import("./offline.js").then(({ keep }) => keep()).catch(() => {});
    // A busy machine, or a tab in the background, may never rest: two more seconds are enough.
    setTimeout(() => globalThis.requestIdleCallback?.(keep, { timeout: 2000 }) ?? keep(), 3000);
  }
}
