// What the parts of the module that load later share with the part that loaded first: its exports.

let exports;

export const share = (instance) => {
  exports = instance;
};

// `later.js`, which the build writes, asks for them under this name.
export const initSync = () => exports;
