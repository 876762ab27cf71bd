@echo off
rem Starts the fieldsalt.jar beside this file with the Java of JAVA_HOME, or else of the PATH.
rem FIELDSALT_OPTS: options for Java, e.g. set FIELDSALT_OPTS=-Xmx4g
rem Exit code: that of fieldsalt, or 127 where there is no Java 17 or later.
setlocal DisableDelayedExpansion
set "HERE=%~dp0"

if defined JAVA_HOME goto home
set "JAVA="
for %%J in (java.exe) do set "JAVA=%%~$PATH:J"
if defined JAVA goto version
>&2 echo fieldsalt needs Java 17 or later: there is no java on the PATH.
goto none

:home
set "JAVA=%JAVA_HOME%\bin\java.exe"
if exist "%JAVA%" goto version
>&2 echo fieldsalt needs Java 17 or later: JAVA_HOME is "%JAVA_HOME%", and there is no bin\java.exe in it.
goto none

:version
for %%J in ("%JAVA%") do set "RELEASE=%%~dpJ..\release"
set "VERSION="
if exist "%RELEASE%" for /f "usebackq tokens=1,2 delims==" %%A in ("%RELEASE%") do if "%%A"=="JAVA_VERSION" set "VERSION=%%~B"
if defined VERSION goto compare
for /f "tokens=3" %%V in ('cmd /c ""%JAVA%" -version 2^>^&1" ^| findstr /c:" version "') do set "VERSION=%%~V"
if not defined VERSION set "VERSION=0"

:compare
for /f "tokens=1 delims=.-+" %%M in ("%VERSION%") do set "MAJOR=%%M"
if %MAJOR% GEQ 17 goto classes
>&2 echo fieldsalt needs Java 17 or later: "%JAVA%" is Java %VERSION%.
goto none

:classes
rem Classes made ready by the build, unless the file was cut short.
set "CLASSES="
set "BYTES="
if exist "%HERE%fieldsalt.jsa.size" set /p BYTES=<"%HERE%fieldsalt.jsa.size"
for %%F in ("%HERE%fieldsalt.jsa") do if "%%~zF"=="%BYTES%" if defined BYTES set CLASSES="-XX:SharedArchiveFile=%HERE%fieldsalt.jsa"

"%JAVA%" -XX:+IgnoreUnrecognizedVMOptions -XX:+UseSerialGC -Xms64m -Xlog:disable -Xshare:auto ^
  -XX:+VerifySharedSpaces %CLASSES% ^
  -XX:Tier4InvocationThreshold=50000 -XX:Tier4MinInvocationThreshold=6000 ^
  -XX:Tier4CompileThreshold=150000 -XX:Tier4BackEdgeThreshold=400000 ^
  %FIELDSALT_OPTS% -jar "%HERE%fieldsalt.jar" %*
exit /b %ERRORLEVEL%

:none
>&2 echo Install it, or set JAVA_HOME to the folder where it is, and run again.
exit /b 127
