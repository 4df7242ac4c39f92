#include "ui/sound/tones.h"

#include "ui/sound/tone.h"

#include <QLibrary>
#include <QThreadPool>

#include <mutex>
#include <vector>

namespace coilbook::tones {

namespace {

using Samples = std::vector<std::int16_t>;

/// The library's own complaints about a machine without sound go nowhere.
void sayNothing(const char* /*file*/, int /*line*/, const char* /*function*/, int /*error*/,
                const char* /*format*/, ...) {}

/// The few functions of the ALSA library that playing a tone takes (its documented C interface,
/// version 2 of the library's binary interface), resolved when the program runs: no sound is needed
/// to build it or to start it.
class SoundLibrary {
public:
    SoundLibrary()
        : m_library(QStringLiteral("asound"), 2)
        , m_open(resolve<Open>("snd_pcm_open"))
        , m_setParams(resolve<SetParams>("snd_pcm_set_params"))
        , m_write(resolve<Write>("snd_pcm_writei"))
        , m_drain(resolve<End>("snd_pcm_drain"))
        , m_close(resolve<End>("snd_pcm_close")) {
        if (const auto setHandler = resolve<SetErrorHandler>("snd_lib_error_set_handler")) {
            setHandler(sayNothing);
        }
    }

    void play(const Samples& samples) {
        constexpr int kPlayback = 0;
        constexpr int kSixteenBitsLittleEndian = 2;
        constexpr int kInterleaved = 3;
        constexpr unsigned kLatencyMicroseconds = 100'000;
        if (!m_open || !m_setParams || !m_write || !m_drain || !m_close) {
            return;
        }
        void* device = nullptr;
        if (m_open(&device, "default", kPlayback, 0) < 0) {
            return;
        }
        if (m_setParams(device, kSixteenBitsLittleEndian, kInterleaved, 1, kSamplesPerSecond, 1,
                        kLatencyMicroseconds) >= 0 &&
            m_write(device, samples.data(), samples.size()) > 0) {
            m_drain(device);
        }
        m_close(device);
    }

private:
    using Open = int (*)(void**, const char*, int, int);
    using SetParams = int (*)(void*, int, int, unsigned, unsigned, int, unsigned);
    using Write = long (*)(void*, const void*, unsigned long);
    using End = int (*)(void*);
    using ErrorHandler = void (*)(const char*, int, const char*, int, const char*, ...);
    using SetErrorHandler = int (*)(ErrorHandler);

    template <class Function>
    Function resolve(const char* name) {
        return reinterpret_cast<Function>(m_library.resolve(name));
    }

    QLibrary m_library;
    Open m_open;
    SetParams m_setParams;
    Write m_write;
    End m_drain;
    End m_close;
};

void play(Samples samples) {
    QThreadPool::globalInstance()->start([samples = std::move(samples)] {
        static std::mutex one; // one tone after the other
        const std::scoped_lock lock(one);
        static SoundLibrary library;
        library.play(samples);
    });
}

} // namespace

void playAccepted() {
    constexpr double kHigh = 880.0;
    play(toneOf(kHigh, 120));
}

void playLookAgain() {
    constexpr double kLow = 330.0;
    Samples twice = toneOf(kLow, 180);
    const Samples once = twice;
    twice.insert(twice.end(), kSamplesPerSecond / 12, 0);
    twice.insert(twice.end(), once.begin(), once.end());
    play(std::move(twice));
}

} // namespace coilbook::tones
