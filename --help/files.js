/* Written by the build. */
export const FILES = {
 "script": {
  "name": "python-ead20f0b441d.mjs",
  "bytes": 240466,
  "sha256": "ead20f0b441d618078ff8519464a0444044ede3410d3945fa363c467062bfb39",
  "sum": "d7799e59eb82720b042d8bfb56f733e1"
 },
 "unpacker": {
  "name": "unxz-eb37d130fd37.wasm",
  "bytes": 12558,
  "sha256": "eb37d130fd379597765e87a044b243fb6ac6d0870ea468374003b9d4c2bee0e4",
  "sum": "c96f25878f8c47ba640a21413cbdf92b"
 },
 "wasm": {
  "name": "python-ea8ec95292d6.wasm.xz",
  "bytes": 417560,
  "sha256": "29a1f60e90f39368b8eb96e3105f52dad057f9d4a950ed6f2b294396debea695",
  "sum": "b79261eb4995ebf631f55ecf85808f5e",
  "unpacked": {
   "name": "python-ea8ec95292d6.wasm",
   "bytes": 1696054,
   "sha256": "ea8ec95292d6335eb768322aa2e5589e057b63c50e605abb05dd64ce22c67c77",
   "sum": "bb3ac697cc53709068fa9e47ed7df610"
  }
 },
 "data": {
  "name": "data-c65e3cb94346.bin.xz",
  "bytes": 1051992,
  "sha256": "1ede26a99af0d026bea2fe9d5e83da06b5e2fa91a6cd011bd7a84e264622d7ed",
  "sum": "f62eb3a6fc93f2175979c26307817849",
  "unpacked": {
   "name": "data-c65e3cb94346.bin",
   "bytes": 3820752,
   "sha256": "c65e3cb9434668fb5b9ff841062bd3db8e711b9ad6f655858999098bb7d0298d",
   "sum": "884087e826026fe57bcd513ca6adb054"
  }
 },
 "snapshot": {
  "name": "memory-ef96d5663d45.bin.xz",
  "bytes": 3773340,
  "sha256": "24b881b4a81ba7cc06acdba8a35decef9b113927906b5e00eb0ab8a05e17c984",
  "sum": "13b09814eb8c18922d2f9143abde25ed",
  "unpacked": {
   "name": "memory-ef96d5663d45.bin",
   "bytes": 17289800,
   "sha256": "ef96d5663d4563e1594a8853c86e7037c7c780aa6c69d68ec560ee5f5555906a",
   "sum": "a4b4e739c844ec21178780aa94102710"
  },
  "memory": 41943040,
  "memory_sha256": "e1dcafed41b59eba47909973510fb018ee8bcd42ffd4e60b6add941d73f14f28"
 },
 "whole_script": {
  "name": "whole-ac58a0a4ce09.mjs",
  "bytes": 309535,
  "sha256": "ac58a0a4ce090e123a14381c5db9361d4ce39c2d826d780e0aafe453c6b2d9ef",
  "sum": "f10448748d774766ea87c53a2762ba41"
 },
 "whole_wasm": {
  "name": "whole-0c06e409b701.wasm.xz",
  "bytes": 2427292,
  "sha256": "a14e5a1f69247e257d69cc578256c96e7d88dc67cc70df2405ff219a79d1a728",
  "sum": "7604230f3b03716e3f420e4f9bf98e69",
  "unpacked": {
   "name": "whole-0c06e409b701.wasm",
   "bytes": 8688356,
   "sha256": "0c06e409b7019349bc9412ca427201a6b7e6cee8e419b90b38ec91f6b99af028",
   "sum": "2feb1065862b439ca4d0e57e532f908a"
  }
 },
 "library": {
  "name": "library-55c444136b8d.zip.xz",
  "bytes": 1084060,
  "sha256": "52e18a17d0a9796eae85e929f87cd8db1a257fd09c8f9a5109a4e98104086100",
  "sum": "9da166109b63cd40ed6f4cf9fc5098d5",
  "unpacked": {
   "name": "library-55c444136b8d.zip",
   "bytes": 4929177,
   "sha256": "55c444136b8d9c02fae42ea0f33e140c8f923e10a2fb88f890bfafd1be4b8616",
   "sum": "9c38ddfcf2a5401482683a4aedc65ab9"
  }
 },
 "platform": {
  "abi_version": "2026_0",
  "arch": "wasm32",
  "platform": "emscripten_5_0_3",
  "python": "3.14.2"
 }
};
