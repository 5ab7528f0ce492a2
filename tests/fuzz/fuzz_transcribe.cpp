#include "fuzz/entry_points.hpp"

#include <cstddef>
#include <cstdint>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    leavenwright::fuzzing::fuzz_transcribe({reinterpret_cast<const char*>(data), size});
    return 0;
}
