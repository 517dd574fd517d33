// Has the room kept on this device (`sw.js`), and tells when a newer version of it is ready. The reader
// says when to change over; until then this page goes on as the version that it was loaded as.

const { dataset } = document.documentElement;

export async function keep() {
  const workers = navigator.serviceWorker;
  const registration = await workers.register("./sw.js");
  const tell = messenger();
  let asked = false;

  const look = async () => {
    // Another version may wait, or may have taken over already because another tab asked for it.
    const next = registration.waiting ?? workers.controller;
    if (!next || (await versionOf(next)) === dataset.version) return;
    tell(() => {
      asked = true;
      if (registration.waiting) registration.waiting.postMessage("change over");
      else location.reload();
    });
  };
  const follow = () => registration.installing?.addEventListener("statechange", look);
  registration.addEventListener("updatefound", follow);
  // Only the tab that asked loads itself anew: in another a case may be open.
  workers.addEventListener("controllerchange", () => (asked ? location.reload() : look()));
  // A page that stays open for days asks whether there is a newer version whenever it is come back to.
  document.addEventListener("visibilitychange", () => {
    if (!document.hidden) registration.update().catch(() => {});
  });
  follow();
  look();

  // Held as long as this page is: the files of its version stay as long.
  navigator.locks.request(`wallwise ${registration.scope} ${dataset.version}`, { mode: "shared" }, () => {
    registration.active?.postMessage("tidy");
    return new Promise(() => {});
  });
}

function versionOf(worker) {
  return new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = ({ data }) => resolve(data);
    worker.postMessage("version", [port2]);
  });
}

// A place above the room, empty until there is something to tell: it covers nothing, and what is read
// aloud has to stand there before it is filled.
function messenger() {
  const place = document.createElement("aside");
  const words = document.createElement("p");
  const button = document.createElement("button");
  place.setAttribute("aria-label", "Newer version");
  words.setAttribute("role", "status");
  button.type = "button";
  button.textContent = "Change over now";
  place.append(words);
  document.body.prepend(place);
  return (change) => {
    button.onclick = change;
    if (button.isConnected) return;
    place.className = "newer";
    // The room says whether this browser lets it keep what was done.
    words.textContent = "A newer version of the room is ready. " +
      ("kept" in dataset ? "What you have done is kept." : "A case that is open would begin anew.");
    place.append(button);
  };
}
